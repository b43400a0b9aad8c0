import { useState } from "preact/hooks";
import { route } from "../shell/router.ts";
import { access, isOwner, pairing } from "../store/pairing.ts";
import { waitingCount } from "../store/state.ts";
import { shopText } from "../words/own.ts";
import { unpair } from "./ask.ts";
import { Devices } from "./devices.tsx";
import { NewCode } from "./new-code.tsx";
import { PairForm } from "./pair-form.tsx";
import { text } from "./strings.ts";

/** How this device stands with the shop: paired or not, as what, and the way in and out. */
export function ThisDevice() {
  // A pairing link is followed even when the device is paired already: it may be as another role.
  const code = route.value[0] === "pair" ? route.value[1] : undefined;
  const open = access.value !== "paired" || code !== undefined;
  return (
    <>
      <section class="panel">
        <h2>{open ? text.pairTitle : text.title}</h2>
        <p role="status">{standing()}</p>
        {open ? <PairForm code={code} /> : <Unpair />}
      </section>
      {isOwner.value && !open && (
        <>
          <Devices />
          <NewCode />
        </>
      )}
    </>
  );
}

function standing(): string {
  const now = pairing.value;
  if (!now) return text.none;
  const shop = shopText(now.shop);
  return now.lapsed ? text.lapsed(shop) : text.paired(shop, now.name, now.role);
}

function Unpair() {
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <button type="button" class="button" onClick={() => setAsked(true)}>
        {text.unpair}
      </button>
    );
  }
  return (
    <>
      <p role="alert">
        {text.unpairWaits(waitingCount.value)}
        {text.unpairNote}
      </p>
      <div class="buttons">
        <button type="button" class="button" onClick={() => void unpair()}>
          {text.sure}
        </button>
        <button type="button" class="button" onClick={() => setAsked(false)}>
          {text.cancel}
        </button>
      </div>
    </>
  );
}
