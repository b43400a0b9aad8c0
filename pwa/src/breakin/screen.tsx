import { later } from "../shell/later.tsx";
import { route } from "../shell/router.ts";
import { engines, plans } from "../store/state.ts";
import "../styles/breakin.css";
import { whenText } from "../units/when.ts";
import { nameText } from "../words/own.ts";
import { PlanForm } from "./plan-form.tsx";
import { PlanPage } from "./plan-page.tsx";
import { RunScreen } from "./run.tsx";
import { text } from "./strings.ts";

const Card = later(async () => (await import("./card.tsx")).CardScreen);

/** Running in: #/plan, #/plan/new, #/plan/ID, and below it run and card. */
export function BreakInScreen() {
  const [, id, verb] = route.value;
  if (id === "new") return <PlanForm />;
  if (!id) return <PlanList />;
  const plan = plans.value.find((one) => one.id === id);
  if (!plan) return <p class="panel">{text.notFound}</p>;
  if (verb === "run") return <RunScreen key={id} plan={plan} />;
  if (verb === "card") return <Card />;
  return <PlanPage key={id} plan={plan} />;
}

function PlanList() {
  const list = [...plans.value].sort((a, b) => b.created_at.localeCompare(a.created_at));
  return (
    <div class="page">
      <h1>{text.title}</h1>
      {list.length === 0 ? (
        <p class="panel">{text.empty}</p>
      ) : (
        <ul class="saved-list">
          {list.map((one) => (
            <li key={one.id}>
              <a class="plan-row" href={`#/plan/${one.id}`}>
                <strong>{nameText(one.label)}</strong>
                <span>{engines.value.find((e) => e.id === one.engine_id)?.name}</span>
                <span class="small">{whenText(one.created_at)}</span>
              </a>
            </li>
          ))}
        </ul>
      )}
      <a class="button button-main" href="#/plan/new">
        {text.newPlan}
      </a>
    </div>
  );
}
