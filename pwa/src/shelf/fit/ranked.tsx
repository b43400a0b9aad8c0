import { useState } from "preact/hooks";
import { FactList } from "../../controls/fact-list.tsx";
import type { FitResult } from "../../core/results.ts";
import { OriginBadge } from "../../result/origin.tsx";
import { showInterval, withUnit } from "../../result/quantity.ts";
import { ToneShape } from "../../result/tone.tsx";
import { unitOf } from "../../store/settings.ts";
import { lengthText } from "../../units/format.ts";
import { whenText } from "../../units/when.ts";
import { short } from "../tag.ts";
import { measurePair } from "./next-trial.tsx";
import { text } from "./strings.ts";
import { chanceText, type Pair, type Table, toneOfChance } from "./table.ts";

const FIRST = 5;
const STEP = 20;

interface Props {
  result: FitResult;
  table: Table;
  /** Where the user has the window from. */
  source: string;
}

/** The likeliest to land in the window first. */
export function Ranked({ result, table, source }: Props) {
  const [shown, setShown] = useState(FIRST);
  const { window } = result;
  const unit = unitOf("readings_mm");
  const left = table.ranked.length - shown;
  return (
    <section class="panel">
      <h2>{text.best}</h2>
      <p class="small">
        {text.window(lengthText(window.lower_mm, unit), lengthText(window.upper_mm, unit))},{" "}
        {table.hot ? text.hot : text.cold}{" "}
        {window.origin === "given by the user" ? (
          <span class="origin origin-own">{source.trim() || text.windowGiven}</span>
        ) : (
          <OriginBadge origin={window.origin} />
        )}
      </p>
      {table.ranked.length === 0 && <p>{text.noneDetermined}</p>}
      <ol class="fit-list">
        {table.ranked.slice(0, shown).map((pair) => (
          <li key={`${pair.chain.id} ${pair.gears.id}`}>
            <details class="fit-row">
              <summary>
                <PairSummary pair={pair} table={table} window={window} />
              </summary>
              <PairFacts pair={pair} />
            </details>
          </li>
        ))}
      </ol>
      {left > 0 && (
        <button
          type="button"
          class="button button-wide"
          onClick={() => setShown((before) => before + STEP)}
        >
          {text.more(Math.min(left, STEP))}
        </button>
      )}
    </section>
  );
}

interface SummaryProps {
  pair: Pair;
  table: Table;
  window: FitResult["window"];
}

/** One combination at a glance: which, how likely, and where its movement lies. */
export function PairSummary({ pair, table, window }: SummaryProps) {
  const { found, chance, rank } = pair;
  const moves = table.hot ? found.hot_movement_mm : found.cold_movement_mm;
  return (
    <>
      <span class="fit-names">
        {rank > 0 && <span class="fit-rank">{text.rank(rank)}</span>}
        <span>
          <strong>{short(pair.chain)}</strong> {text.onWord} <strong>{short(pair.gears)}</strong>
          {(pair.chain.tag || pair.gears.tag) && (
            <span class="small shelf-summary">
              {pair.chain.label}, {pair.gears.label}
            </span>
          )}
        </span>
      </span>
      <span class="fit-chance">
        <ToneShape tone={toneOfChance(chance)} />
        <span class="num">{chance === null ? text.undetermined : chanceText(chance)}</span>
      </span>
      {moves && <Bar at={moves} window={window} />}
    </>
  );
}

interface Interval {
  value: number;
  low: number;
  high: number;
}

/** Room beyond the window's upper end on the bar, as a multiple of it. */
const BAR_ROOM = 2;

/** The movement with its interval over the wanted window; the same scale for every row. */
function Bar({ at, window }: { at: Interval; window: FitResult["window"] }) {
  const end = window.upper_mm * BAR_ROOM;
  const x = (mm: number) => `${(100 * Math.min(end, Math.max(0, mm))) / end}%`;
  const wide = `${(100 * (window.upper_mm - window.lower_mm)) / end}%`;
  return (
    <span class="fit-bar">
      <svg aria-hidden="true">
        <line class="fit-axis" x1="0" x2="100%" y1="9" y2="9" />
        <rect class="fit-window" x={x(window.lower_mm)} width={wide} y="1" height="16" />
        <line class="fit-line" x1={x(at.low)} x2={x(at.high)} y1="9" y2="9" />
        {at.value <= end ? (
          <circle class="fit-dot" cx={x(at.value)} cy="9" r="4.5" />
        ) : (
          <svg x="100%" overflow="visible" aria-hidden="true">
            <path class="fit-dot" d="M-9 3v12L0 9z" />
          </svg>
        )}
      </svg>
      <span class="num small">{movementText(at)}</span>
    </span>
  );
}

function movementText(at: Interval): string {
  if (at.high <= 0) return text.noSlack;
  const { value, low, high, unit } = showInterval("movement_mm", at, unitOf("readings_mm"));
  return `${withUnit(value, unit)} (${low}\u2013${high})`;
}

/** What is behind one combination, and the way to measure it. */
export function PairFacts({ pair }: { pair: Pair }) {
  const { found, trials } = pair;
  const rows: [string, string][] = [];
  if (found.hot_movement_mm) rows.push([text.hotMoves, movementText(found.hot_movement_mm)]);
  if (found.hot_probability != null) {
    rows.push([`${text.hotMoves}, ${text.chance}`, chanceText(found.hot_probability)]);
  }
  if (found.cold_movement_mm) rows.push([text.coldMoves, movementText(found.cold_movement_mm)]);
  if (found.cold_probability != null) {
    rows.push([`${text.coldMoves}, ${text.chance}`, chanceText(found.cold_probability)]);
  }
  rows.push([text.trialsUsed, text.trialHere(trials.length)]);
  return (
    <div class="fit-facts">
      <FactList rows={rows} />
      {trials.map((one) => (
        <a key={one.id} class="button" href={`#/saved/${one.id}`}>
          {whenText(one.taken_at)}
        </a>
      ))}
      <button type="button" class="button" onClick={() => measurePair(pair.chain, pair.gears)}>
        {text.measure}
      </button>
    </div>
  );
}
