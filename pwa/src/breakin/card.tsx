import { usePaper } from "../builds/page-foot.ts";
import { coreVersion } from "../core/terms.ts";
import { OriginBadge } from "../result/origin.tsx";
import { Back } from "../shell/back.tsx";
import { route } from "../shell/router.ts";
import type { Plan } from "../store/records.ts";
import { distanceUnit } from "../store/settings.ts";
import { engines, plans } from "../store/state.ts";
import "../styles/sheet.css";
import { nameText } from "../words/own.ts";
import { Due } from "./facts.tsx";
import { text } from "./strings.ts";
import { useAdapted } from "./use-plan.ts";

export function CardScreen() {
  const plan = plans.value.find((one) => one.id === route.value[1]);
  return plan ? <Card plan={plan} /> : null;
}

/** What the customer takes along: what is due and when, and what to mind. */
function Card({ plan }: { plan: Plan }) {
  const now = useAdapted(plan);
  const engine = engines.value.find((one) => one.id === plan.engine_id);
  const name = engine?.name ?? "";
  const label = nameText(plan.label);
  usePaper(`${text.cardFor}, ${name || label}`, `${name} · ${label}`);
  const due = (now?.steps ?? []).filter((one) => one.ends === "distance" && one.status === "to-do");
  const minds = new Map(due.flatMap((one) => one.cautions).map((one) => [one.code, one.text]));
  return (
    <div class="sheet-page">
      <div class="sheet-tools">
        <Back to={`plan/${plan.id}`}>{label}</Back>
        <button type="button" class="button button-main" onClick={() => print()}>
          {text.print}
        </button>
      </div>
      <article class="sheet plan-card" data-ready={now !== null}>
        <p class="sheet-kind">{text.cardFor}</p>
        <h1>{name || label}</h1>
        {engine?.invented && <p class="sheet-invented">{text.invented}</p>}
        {now && (
          <p>
            {text.cardOil}: {text.oils.find((one) => one.id === now.oil.kind)?.label}{" "}
            {now.oil.grade?.grade}
          </p>
        )}
        <section>
          <h2>{text.cardDue}</h2>
          <table>
            <thead>
              <tr>
                <th scope="col">{text.cardWhat}</th>
                <th scope="col">{text.cardWhen}</th>
                <th scope="col">{text.cardDone(distanceUnit())}</th>
              </tr>
            </thead>
            <tbody>
              {due.map((one) => (
                <tr key={one.key}>
                  <th scope="row">{one.title}</th>
                  <td>
                    <Due step={one} />
                    {one.oil}
                  </td>
                  <td />
                </tr>
              ))}
            </tbody>
          </table>
        </section>
        {now && (
          <section>
            <h2>{text.chain}</h2>
            <p>
              {now.chain.text} <OriginBadge origin={now.chain.origin} />
            </p>
          </section>
        )}
        <section>
          <h2>{text.cardMind}</h2>
          <ul>
            <li>{text.cardManual}</li>
            {[...minds].map(([code, words]) => (
              <li key={code}>{words}</li>
            ))}
          </ul>
        </section>
        <p class="sheet-made">{text.cardNote(coreVersion)}</p>
      </article>
    </div>
  );
}
