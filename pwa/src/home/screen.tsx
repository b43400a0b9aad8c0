import { useEffect, useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import { text as engine } from "../screens/strings.ts";
import { Icon } from "../shell/icon.tsx";
import { InTurn } from "../shell/in-turn.tsx";
import type { Group } from "../shell/nav.tsx";
import { chainsHere, currentBuild, currentEngine, gearSetsHere } from "../store/settings.ts";
import { engines, plans, readings } from "../store/state.ts";
import { nameText } from "../words/own.ts";
import { readingLine, records } from "./all.ts";
import { type Findable, find } from "./find.ts";
import { text } from "./strings.ts";

const MOST = 12;
/** Parts of the day that are on a phone's screen at once. */
const SEEN = 3;

const loadDemo = async () => (await import("../screens/demo.ts")).loadDemo();

/** The first screen: the day in its order, what stands where, and a way to find anything. */
export function HomeScreen({ groups }: { groups: Group[] }) {
  const [typed, setTyped] = useState("");
  return (
    <div class="page home">
      <h1>{text.title}</h1>
      {engines.value.length === 0 && <Start />}
      <PlainField
        field="find"
        label={text.find}
        value={typed}
        hint={text.findHint}
        onValue={setTyped}
      />
      {typed.trim() === "" ? <Day groups={groups} /> : <Found typed={typed} groups={groups} />}
    </div>
  );
}

function Start() {
  return (
    <section class="panel empty">
      <h2>{engine.emptyTitle}</h2>
      <p>{engine.emptyText}</p>
      <a class="button button-main" href="#/drive/new">
        {engine.enterEngine}
      </a>
      <button type="button" class="button button-wide" onClick={() => void loadDemo()}>
        {engine.loadDemo}
      </button>
      <p class="small">{engine.loadDemoNote}</p>
    </section>
  );
}

function Day({ groups }: { groups: Group[] }) {
  const part = (group: Group) => <Part key={group.id} group={group} />;
  return (
    <ol class="day">
      {groups.slice(0, SEEN).map(part)}
      <InTurn>{groups.slice(SEEN).map(part)}</InTurn>
    </ol>
  );
}

function Part({ group }: { group: Group }) {
  return (
    <li class="panel">
      <h2>
        <Icon name={group.icon} /> {group.label}
      </h2>
      <p>{text.asks[group.id]}</p>
      <State group={group} />
      <ul class="day-places">
        {group.places.map(({ id, label }) => (
          <li key={id}>
            <a class="button" href={`#/${id}`}>
              {label}
            </a>
          </li>
        ))}
      </ul>
    </li>
  );
}

/** Where the current engine stands in this part of the day; nothing where there is nothing yet. */
function State({ group }: { group: Group }) {
  const engine = currentEngine.value;
  if (group.id === "choose") {
    const [chains, gears] = [chainsHere.value.length, gearSetsHere.value.length];
    return chains + gears > 0 ? <p class="small">{text.onShelf(chains, gears)}</p> : null;
  }
  if (group.id === "breakin") {
    const plan = plans.value.findLast((one) => engine && one.engine_id === engine.id);
    return plan ? <p class="small">{text.planned(nameText(plan.label))}</p> : null;
  }
  if (group.id === "record") {
    const build = currentBuild.value;
    return build ? <p class="small">{text.inHand(build.label)}</p> : null;
  }
  const here = new Set<string>(group.places.map(({ id }) => id));
  const last = readings.value
    .filter(({ calc, engine_id }) => engine_id === engine?.id && here.has(BENCH_OF[calc] ?? calc))
    .sort((a, b) => b.taken_at.localeCompare(a.taken_at))[0];
  if (!last) return null;
  return (
    <p class="small">
      {text.last} <a href={`#/saved/${last.id}`}>{readingLine(last)}</a>
    </p>
  );
}

/** Where a calculation has another name than its bench. */
const BENCH_OF: Record<string, string> = {
  elongation: "wear",
  "crank-rock": "slack",
  bored: "heat",
  matrix: "rockers",
  compression: "clearance",
};

function Found({ typed, groups }: { typed: string; groups: Group[] }) {
  const [called, setCalled] = useState<Record<string, string>>({});
  useEffect(() => {
    import("./trade.ts").then(
      ({ trade }) => setCalled(trade),
      () => {}, // found by their own names, then
    );
  }, []);
  const screens: Findable[] = groups.flatMap((group) =>
    group.places.map(({ id, label }) => ({
      kind: text.kinds.screen,
      name: label,
      words: `${group.label} ${called[id] ?? ""}`,
      href: `#/${id}`,
    })),
  );
  const found = find(typed, [...screens, ...records.value]);
  return (
    <section class="panel" aria-live="polite">
      <h2>{found.length > 0 ? text.found(found.length) : text.nothing}</h2>
      <ul class="rows">
        {found.slice(0, MOST).map((one) => (
          <li key={`${one.href} ${one.name}`}>
            <a class="row home-row" href={one.href}>
              <span>{one.name}</span>
              <small>{one.kind}</small>
            </a>
          </li>
        ))}
      </ul>
      {found.length > MOST && <p class="small">{text.more(found.length - MOST)}</p>}
    </section>
  );
}
