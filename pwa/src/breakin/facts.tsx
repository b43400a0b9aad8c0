/** What a step says, each line with its origin. */
import type { FigureOnFile, PlanStep } from "../core/results.ts";
import { OriginBadge, Source } from "../result/origin.tsx";
import { distanceUnit } from "../store/settings.ts";
import { distanceText } from "../units/distance.ts";
import { runningNumber } from "../units/running.ts";
import { text } from "./strings.ts";

type Said = { text: string; origin: string };
type Caution = PlanStep["cautions"][number];

/** Headings of a list stand under the screen's own, or under those of a part of it. */
type Level = "h2" | "h3";

export function SaidList(props: { title: string; list: Said[]; heading?: Level }) {
  const { title, list, heading: Heading = "h3" } = props;
  if (list.length === 0) return null;
  return (
    <section class="said">
      <Heading>{title}</Heading>
      <ul>
        {list.map((one) => (
          <li key={one.text}>
            {one.text} <OriginBadge origin={one.origin} />
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Cautions(props: { list: Caution[]; heading?: Level }) {
  const { list, heading: Heading = "h3" } = props;
  if (list.length === 0) return null;
  return (
    <section class="said mind">
      <Heading>{text.mind}</Heading>
      <ul>
        {list.map((one) => (
          <li key={one.code}>
            <p>
              {one.text} <OriginBadge origin={one.origin} />{" "}
              <Source source={one.source} address={one.address} />
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Figures({ list }: { list: FigureOnFile[] }) {
  return (
    <ul class="figures">
      {list.map((one) => (
        <li key={one.id}>
          <p>
            {one.label} <OriginBadge origin={one.origin} />{" "}
            <Source source={one.source} address={one.address} />
            {one.note && <span class="small"> {one.note}</span>}
          </p>
        </li>
      ))}
    </ul>
  );
}

/** What every source admits, "2000 rpm", before all that they span; the span alone if they differ. */
export function Band({ band, big = false }: { band: PlanStep["speed"]; big?: boolean }) {
  if (!band) return null;
  const { lower, upper, common_lower: from, common_upper: to } = band;
  const unit = band.unit === "1/min" ? text.rpm : band.unit;
  const agree = typeof from === "number" && typeof to === "number";
  const span = rangeText(lower, upper);
  const common = agree ? rangeText(from, to) : span;
  return (
    <p class={big ? "band band-big" : "band"}>
      <span class="num">
        {common} <small>{unit}</small>
      </span>{" "}
      {common !== span && <span class="band-note">{text.sourcesAgree}</span>}
      {!agree && <span class="band-note">{text.sourcesDiffer}</span>}{" "}
      <OriginBadge origin={band.origin} />
      {common !== span && (
        <span class="small band-span">
          {text.sourcesSpan(`${span} ${unit}`)} <OriginBadge origin={band.origin} />
        </span>
      )}
    </p>
  );
}

const rangeText = (from: number, to: number) => (from === to ? `${to}` : `${from}–${to}`);

/** Every figure a step rests on. */
export function figuresOf(step: PlanStep): FigureOnFile[] {
  return [...(step.speed?.figures ?? []), ...(step.time?.figures ?? []), ...step.figures];
}

export function Due({ step }: { step: PlanStep }) {
  const { at_distance_km: km, at_running_h: hours, after_weeks: weeks } = step;
  if (typeof km !== "number" || typeof hours !== "number") return null;
  return (
    <p class="due">
      {text.dueAt(distanceText(km, distanceUnit()), runningNumber(hours))}
      {typeof weeks === "number" && `, ${text.dueIn(weeks)}`}{" "}
      {step.due_origin && <OriginBadge origin={step.due_origin} />}
    </p>
  );
}
