import { useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import { loadDemo } from "../screens/demo.ts";
import { GoneList, UndoNotice } from "../screens/gone.tsx";
import { text as goneText } from "../screens/gone-strings.ts";
import { Back } from "../shell/back.tsx";
import { Icon } from "../shell/icon.tsx";
import { go, route } from "../shell/router.ts";
import type { Chain, GearSet } from "../store/records.ts";
import { chains, gearSets } from "../store/state.ts";
import { ChainForm } from "./chain-form.tsx";
import { ChainPage } from "./chain-page.tsx";
import { GearsForm } from "./gears-form.tsx";
import { GearsPage } from "./gears-page.tsx";
import { chainSummary, gearsSummary } from "./history.ts";
import { ScanButton } from "./scan-button.tsx";
import { text } from "./strings.ts";
import { find, inOrder, sameTag, tagged } from "./tag.ts";

type Part = "chain" | "gears";

/** The shelf: find a part, open it, add one. */
export function ShelfScreen() {
  const [, part, id, verb] = route.value;
  if (part !== "chain" && part !== "gears") return <Shelf />;
  const all: (Chain | GearSet)[] = part === "chain" ? chains.value : gearSets.value;
  const one = all.find((it) => it.id === id) ?? null;
  const tag = id === "new" ? (verb ?? "") : "";
  if (!one && id !== "new") return <p class="panel">{text.notFound}</p>;
  const form = id === "new" || verb === "edit";
  return (
    <div class="page shelf-page" key={`${part} ${id} ${form}`}>
      <Back to={form && one ? `shelf/${part}/${one.id}` : "shelf"}>
        {form && one ? one.label : text.backToShelf}
      </Back>
      {part === "chain" && form && <ChainForm chain={one as Chain | null} tag={tag} />}
      {part === "chain" && !form && one && <ChainPage chain={one as Chain} />}
      {part === "gears" && form && <GearsForm gears={one as GearSet | null} tag={tag} />}
      {part === "gears" && !form && one && <GearsPage gears={one as GearSet} />}
    </div>
  );
}

/** The page of the only part that has this very tag, if there is one. */
function pageOfTag(tag: string): string | null {
  const found: [Part, string][] = [
    ...chains.value
      .filter((one) => sameTag(one.tag, tag))
      .map((one): [Part, string] => ["chain", one.id]),
    ...gearSets.value
      .filter((one) => sameTag(one.tag, tag))
      .map((one): [Part, string] => ["gears", one.id]),
  ];
  return found.length === 1 && found[0] ? `shelf/${found[0].join("/")}` : null;
}

function Shelf() {
  const [typed, setTyped] = useState("");
  const empty = chains.value.length === 0 && gearSets.value.length === 0;
  const foundChains = find(inOrder(chains.value), typed);
  const foundGears = find(inOrder(gearSets.value), typed);
  const nothing = !empty && foundChains.length === 0 && foundGears.length === 0;
  const scanned = (tag: string) => {
    const page = pageOfTag(tag);
    if (page) go(page);
    else setTyped(tag);
  };
  return (
    <div class="page shelf-page">
      <h1>{text.title}</h1>
      <UndoNotice />
      {empty ? (
        <Teach />
      ) : (
        <>
          <PlainField
            field="shelf_find"
            label={text.find}
            value={typed}
            onValue={setTyped}
            hint={nothing ? text.nothingFound(typed) : text.findHint}
            maxLength={60}
          >
            <ScanButton onTag={scanned} />
          </PlainField>
          {nothing && <AddTagged tag={typed.trim()} />}
        </>
      )}
      {!nothing && (
        <>
          <Parts part="chain" title={text.chains} none={text.noChains} add={text.addChain}>
            {foundChains.map((one) => (
              <Row key={one.id} part="chain" one={one} summary={chainSummary(one)} />
            ))}
          </Parts>
          <Parts part="gears" title={text.gears} none={text.noGears} add={text.addGears}>
            {foundGears.map((one) => (
              <Row key={one.id} part="gears" one={one} summary={gearsSummary(one)} />
            ))}
          </Parts>
        </>
      )}
      {!empty && (
        <a class="button button-main" href="#/fit">
          {text.openFit}
        </a>
      )}
      <GoneList
        kinds={["chains", "gear-sets"]}
        title={goneText.removed}
        nameOf={({ record }) => tagged(record as Chain | GearSet)}
      />
    </div>
  );
}

function Teach() {
  return (
    <section class="panel empty">
      <h2>{text.emptyTitle}</h2>
      <p>{text.emptyText}</p>
      <button type="button" class="button button-wide" onClick={() => void loadDemo()}>
        {text.loadDemo}
      </button>
    </section>
  );
}

/** A tag that nothing has yet is most often that of a new part. */
function AddTagged({ tag }: { tag: string }) {
  const path = encodeURIComponent(tag.replaceAll("/", "-"));
  return (
    <div class="buttons">
      <a class="button button-wide" href={`#/shelf/chain/new/${path}`}>
        {text.addTagged(text.aChain, tag)}
      </a>
      <a class="button button-wide" href={`#/shelf/gears/new/${path}`}>
        {text.addTagged(text.aGearSet, tag)}
      </a>
    </div>
  );
}

interface PartsProps {
  part: Part;
  title: string;
  none: string;
  add: string;
  children: preact.ComponentChild[];
}

function Parts({ part, title, none, add, children }: PartsProps) {
  return (
    <section class="panel">
      <h2>
        {title} {children.length > 0 && <span class="small">{children.length}</span>}
      </h2>
      {children.length === 0 && <p class="small">{none}</p>}
      <ul class="rows">
        {children}
        <li>
          <a class="row" href={`#/shelf/${part}/new`}>
            <span>{add}</span>
            <Icon name="add" />
          </a>
        </li>
      </ul>
    </section>
  );
}

function Row({ part, one, summary }: { part: Part; one: Chain | GearSet; summary: string }) {
  return (
    <li>
      <a class="row shelf-row" href={`#/shelf/${part}/${one.id}`}>
        <span>
          {one.tag && <span class="shelf-tag">{one.tag}</span>} {one.label}
          <span class="small shelf-summary">{summary}</span>
        </span>
        <span class="row-side" aria-hidden="true">
          ›
        </span>
      </a>
    </li>
  );
}
