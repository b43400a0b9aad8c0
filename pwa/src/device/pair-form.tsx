import { useState } from "preact/hooks";
import { PlainField } from "../controls/plain-field.tsx";
import { text as control } from "../controls/strings.ts";
import { ScanButton } from "../shelf/scan-button.tsx";
import { go } from "../shell/router.ts";
import { pairing } from "../store/pairing.ts";
import { locale } from "../words/language.ts";
import { pairBy } from "./ask.ts";
import { codeOfLink, isCode } from "./code.ts";
import { text } from "./strings.ts";

const LONGEST_NAME = 60;

/** A name that tells this device from the others in the list: what it is, and when it came. */
function guessName(): string {
  if (pairing.value) return pairing.value.name;
  const inHand = matchMedia("(pointer: coarse)").matches;
  const day = new Date().toLocaleString(locale, { dateStyle: "medium", timeStyle: "short" });
  return `${inHand ? text.guess.phone : text.guess.browser}, ${day}`;
}

/** A code, typed, scanned or opened as a link; nothing is paired before the button is tapped. */
export function PairForm({ code: given = "" }: { code?: string | undefined }) {
  const [code, setCode] = useState(given);
  const [name, setName] = useState(guessName);
  const [problem, setProblem] = useState("");
  const [busy, setBusy] = useState(false);
  const pair = async () => {
    if (!isCode(code)) {
      setProblem(control.got(text.code, code, text.codeNeed));
      return;
    }
    setBusy(true);
    const said = await pairBy(code, name.trim() || guessName());
    setProblem(said ?? "");
    setBusy(false);
    // The code is used up: away from its address, which a reload would open again.
    if (said === null) go("settings");
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void pair();
      }}
    >
      <PlainField
        field="pairing_code"
        label={text.code}
        value={code}
        hint={text.codeHint}
        maxLength={40}
        onValue={setCode}
      >
        <ScanButton
          onTag={setCode}
          read={codeOfLink}
          cannot={text.cannotScan}
          pointAt={text.pointAt}
        />
      </PlainField>
      <PlainField
        field="device_name"
        label={text.name}
        value={name}
        hint={text.nameHint}
        maxLength={LONGEST_NAME}
        onValue={setName}
      />
      {problem && (
        <p class="notice" role="alert">
          {problem}
        </p>
      )}
      <button type="submit" class="button button-main" disabled={busy}>
        {busy ? text.pairing : text.pair}
      </button>
    </form>
  );
}
