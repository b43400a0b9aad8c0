import { useEffect, useRef } from "preact/hooks";
import { tagged } from "../shelf/tag.ts";
import { access } from "../store/pairing.ts";
import { currentBuild, currentChain, currentEngine, currentGearSet } from "../store/settings.ts";
import { conflicts, engines, readings, refused, waitingCount } from "../store/state.ts";
import { line, syncing } from "../store/sync.ts";
import { Icon } from "./icon.tsx";
import { text } from "./strings.ts";

/** Which engine is on the bench, and where the records are. */
export function Header() {
  const engine = currentEngine.value;
  const build = currentBuild.value;
  const on = onBench();
  const box = useRef<HTMLElement>(null);
  useEffect(() => tellHeight(box.current), []);
  return (
    <header class="header" ref={box}>
      <a class="header-home" href="#/home" aria-label={text.home}>
        <Icon name="home" />
      </a>
      <a class="header-engine" href="#/drive">
        <span class="visually-hidden">{text.engine} </span>
        <span class="header-name">{engine?.name ?? text.noEngine}</span>
        {(engine?.invented || build || on) && (
          <span class="header-second">
            {engine?.invented && <span class="tag">{text.invented}</span>}
            {(build || on) && (
              <span class="header-chain">
                {build && <span class="visually-hidden">{text.build} </span>}
                {build?.label}
                {on && (
                  <>
                    {build && " · "}
                    <Icon name="measure" />
                    <span class="visually-hidden">{text.measured} </span>
                    {on}
                  </>
                )}
              </span>
            )}
          </span>
        )}
      </a>
      <a class="header-state" href="#/settings">
        <span class="visually-hidden">{text.settings}. </span>
        <span class="state" data-testid="sync-state" data-state={stateName()}>
          {stateWords()}
        </span>
        <Icon name="settings" />
      </a>
    </header>
  );
}

/** Tells the styles what the header covers: more where names take more lines. */
function tellHeight(header: HTMLElement | null): (() => void) | undefined {
  if (!header) return undefined;
  const watch = new ResizeObserver(() => {
    document.documentElement.style.setProperty("--covered", `${header.offsetHeight}px`);
  });
  watch.observe(header);
  return () => watch.disconnect();
}

/** The chain on the bench; by their tags where it lies on a gear set, so that both can be read. */
function onBench(): string {
  const chain = currentChain.value;
  const gears = currentGearSet.value;
  if (!chain || !gears) return chain || gears ? tagged(chain ?? gears ?? { label: "" }) : "";
  return text.chainOn(chain.tag ?? chain.label, gears.tag ?? gears.label);
}

function stateName(): "refused" | "waiting" | "offline" | "server" | "unpaired" {
  if (access.value !== "paired") return "unpaired";
  if (refused.value.length + conflicts.value.length > 0) return "refused";
  if (waitingCount.value > 0) return "waiting";
  return line.value === "reached" ? "server" : "offline";
}

function stateWords(): string {
  if (access.value !== "paired") return access.value === "none" ? text.onlyPhone : text.pairAgain;
  if (conflicts.value.length > 0) return text.toChoose(conflicts.value.length);
  if (refused.value.length > 0) return text.refusedCount(refused.value.length);
  if (waitingCount.value > 0) {
    return syncing.value ? text.sending : `${text.onPhone}, ${text.waits(waitingCount.value)}`;
  }
  if (readings.value.length === 0 && engines.value.length === 0) return text.nothingYet;
  return text.onServer;
}
