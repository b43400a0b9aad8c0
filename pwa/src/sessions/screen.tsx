import type { ComponentChildren } from "preact";
import { warm } from "../core/client.ts";
import { Back } from "../shell/back.tsx";
import { later } from "../shell/later.tsx";
import { route } from "../shell/router.ts";
import { sessions } from "../store/state.ts";
import "../styles/builds.css";
import "../styles/sessions.css";
import { FileForm } from "./file-form.tsx";
import { SessionList } from "./list.tsx";
import { RunForm } from "./run-form.tsx";
import { SessionForm } from "./session-form.tsx";
import { SessionPage } from "./session-page.tsx";
import { text } from "./strings.ts";

const ComparePage = later(async () => {
  warm("compare");
  return (await import("../compare/screen.tsx")).ComparePage;
});
const CustomerPage = later(async () => {
  warm("compare");
  return (await import("../compare/page.tsx")).CustomerPage;
});

/** Dyno sessions: #/sessions, #/sessions/new, #/sessions/ID, and below it edit, run, file, compare, page. */
export function SessionsScreen() {
  const [, id, verb] = route.value;
  if (!id) return <SessionList />;
  if (id === "new") {
    return <Framed to="sessions" back={text.back} form={<SessionForm session={null} />} />;
  }
  const session = sessions.value.find((one) => one.id === id);
  if (!session) return <p class="panel">{text.notFound}</p>;
  if (!verb) return <SessionPage key={id} session={session} />;
  if (verb === "compare") return <ComparePage key={id} session={session} />;
  if (verb === "page") return <CustomerPage key={id} session={session} />;
  const forms: Record<string, ComponentChildren> = {
    edit: <SessionForm session={session} />,
    run: <RunForm session={session} />,
    file: <FileForm session={session} />,
  };
  const form = forms[verb];
  if (!form) return <p class="panel">{text.notFound}</p>;
  return <Framed key={verb} to={`sessions/${id}`} back={session.label} form={form} />;
}

function Framed({ to, back, form }: { to: string; back: string; form: ComponentChildren }) {
  return (
    <div class="page builds-page sessions-page">
      <Back to={to}>{back}</Back>
      {form}
    </div>
  );
}
