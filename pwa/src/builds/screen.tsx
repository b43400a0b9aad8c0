import type { ComponentChildren } from "preact";
import { Back } from "../shell/back.tsx";
import { route } from "../shell/router.ts";
import { builds, entries } from "../store/state.ts";
import "../styles/builds.css";
import { BuildForm } from "./build-form.tsx";
import { BuildPage } from "./build-page.tsx";
import { KINDS } from "./entry-draft.ts";
import { EntryForm } from "./entry-form.tsx";
import { BuildList } from "./list.tsx";
import { Sheet } from "./sheet.tsx";
import { text } from "./strings.ts";

/** The build record: #/builds, #/builds/new, #/builds/ID, and below it edit, sheet, KIND, ENTRY. */
export function BuildsScreen() {
  const [, id, verb] = route.value;
  if (!id) return <BuildList />;
  if (id === "new")
    return <Framed to="builds" back={text.back} form={<BuildForm build={null} />} />;
  const build = builds.value.find((one) => one.id === id);
  if (!build) return <p class="panel">{text.notFound}</p>;
  if (!verb) return <BuildPage key={id} build={build} />;
  if (verb === "sheet") return <Sheet build={build} />;
  const entry = entries.value.find((one) => one.id === verb && one.build_id === id) ?? null;
  const kind = entry?.kind ?? KINDS.find((one) => one === verb);
  const form =
    verb === "edit" ? (
      <BuildForm build={build} />
    ) : kind ? (
      <EntryForm build={build} kind={kind} entry={entry} />
    ) : null;
  if (!form) return <p class="panel">{text.notFound}</p>;
  return <Framed key={verb} to={`builds/${id}`} back={build.label} form={form} />;
}

function Framed({ to, back, form }: { to: string; back: string; form: ComponentChildren }) {
  return (
    <div class="page builds-page">
      <Back to={to}>{back}</Back>
      {form}
    </div>
  );
}
