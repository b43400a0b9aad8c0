import { coreVersion } from "../core/terms.ts";
import { Back } from "../shell/back.tsx";
import type { Build } from "../store/records.ts";
import { engines } from "../store/state.ts";
import "../styles/sheet.css";
import { whenText } from "../units/when.ts";
import { usePaper } from "./page-foot.ts";
import { itemsOf, readingsBefore } from "./record.ts";
import { Cautions, Origins } from "./sheet-notes.tsx";
import { Before, InIt, Latest, Record, SetTo } from "./sheet-parts.tsx";
import { text } from "./sheet-strings.ts";
import { latest } from "./timeline.ts";

/** The build on paper: everything that another mechanic needs to know of it. */
export function Sheet({ build }: { build: Build }) {
  const engine = engines.value.find((one) => one.id === build.engine_id);
  const items = itemsOf(build);
  const last = latest(items);
  const before = readingsBefore(build);
  const shown = [...last, ...before];
  const name = engine?.name ?? "";
  const label = build.label;
  usePaper(`${text.title}, ${name}, ${label}`, `${name} · ${label}`);
  return (
    <div class="sheet-page">
      <div class="sheet-tools">
        <Back to={`builds/${build.id}`}>{text.back}</Back>
        <button type="button" class="button button-main" onClick={() => print()}>
          {text.print}
        </button>
        <p class="small">{text.printNote}</p>
      </div>
      <article class="sheet">
        <header>
          <p class="sheet-kind">{text.title}</p>
          <h1>{name}</h1>
          <p class="sheet-build">{label}</p>
        </header>
        {engine?.invented && (
          <p class="sheet-invented">
            <strong>{text.inventedTitle}.</strong> {text.invented}
          </p>
        )}
        <InIt build={build} />
        <Latest readings={last} />
        <Before readings={before} />
        <SetTo items={items} />
        <Record items={items} />
        <Cautions readings={shown} />
        <Origins readings={shown} />
        <p class="sheet-made">
          {text.printed(whenText(new Date().toISOString()))}. {text.made(coreVersion)}
        </p>
      </article>
    </div>
  );
}
