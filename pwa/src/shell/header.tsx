import { currentChain, currentEngine } from "../store/settings.ts";
import { engines, readings, refused, waitingCount } from "../store/state.ts";
import { line, syncing } from "../store/sync.ts";
import { Icon } from "./icon.tsx";
import { text } from "./strings.ts";

/** Which engine is on the bench, and where the records are. */
export function Header() {
  const engine = currentEngine.value;
  const chain = currentChain.value;
  return (
    <header class="header">
      <a class="header-engine" href="#/drive">
        <span class="visually-hidden">{text.engine} </span>
        <span class="header-name">{engine?.name ?? text.noEngine}</span>
        {(engine?.invented || chain) && (
          <span class="header-second">
            {engine?.invented && <span class="tag">{text.invented}</span>}
            {chain && <span class="header-chain">{chain.label}</span>}
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

function stateName(): "refused" | "waiting" | "offline" | "server" {
  if (refused.value.length > 0) return "refused";
  if (waitingCount.value > 0) return "waiting";
  return line.value === "reached" ? "server" : "offline";
}

function stateWords(): string {
  if (refused.value.length > 0) return text.refusedCount(refused.value.length);
  if (waitingCount.value > 0) {
    return syncing.value ? text.sending : `${text.onPhone}, ${text.waits(waitingCount.value)}`;
  }
  if (readings.value.length === 0 && engines.value.length === 0) return text.nothingYet;
  return text.onServer;
}
