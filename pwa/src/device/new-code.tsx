import { useState } from "preact/hooks";
import { Choice } from "../controls/choice.tsx";
import { QrCode } from "../picture/qr-code.tsx";
import type { Role } from "../store/pairing.ts";
import { locale } from "../words/language.ts";
import { newCode } from "./ask.ts";
import { linkOf } from "./code.ts";
import { ROLES, text } from "./strings.ts";

interface Shown {
  code: string;
  expires_at: string;
}

/** Makes a code that lets one more device in, and shows it to that device's camera. */
export function NewCode() {
  const [role, setRole] = useState<Role>("member");
  const [shown, setShown] = useState<Shown | null>(null);
  const [problem, setProblem] = useState("");
  const make = async () => {
    const answer = await newCode(role);
    setProblem("problem" in answer ? answer.problem : "");
    setShown("made" in answer ? answer.made : null);
  };
  return (
    <section class="panel">
      <h2>{text.add}</h2>
      <Choice
        name="new-role"
        legend={text.newRole}
        options={ROLES}
        value={role}
        onValue={(id) => {
          setRole(id as Role);
          setShown(null);
        }}
      />
      {shown && (
        <figure class="pairing-code">
          <QrCode text={linkOf(shown.code)} />
          <figcaption>
            <strong>{shown.code}</strong>
            <span>{text.codeLasts(timeText(shown.expires_at))}</span>
          </figcaption>
        </figure>
      )}
      {problem && <p role="status">{problem}</p>}
      <button type="button" class="button button-wide" onClick={() => void make()}>
        {text.newCode}
      </button>
    </section>
  );
}

function timeText(at: string): string {
  return new Date(at).toLocaleTimeString(locale, { hour: "2-digit", minute: "2-digit" });
}
