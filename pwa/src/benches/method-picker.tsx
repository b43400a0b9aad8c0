import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { Choice } from "../controls/choice.tsx";
import type { FormProps } from "./bench.ts";
import { withField } from "./draft.ts";
import { text } from "./strings.ts";

interface Props<M extends string> {
  /** Name of the choice, one for each bench. */
  name: string;
  legend: string;
  method: M;
  methods: Record<M, { label: string; how: string }>;
  /** The methods to choose from, as they show. */
  order: readonly M[];
  picture(method: M): ComponentChildren;
  draft: FormProps["draft"];
  change: FormProps["change"];
  /** What narrows the choice, above it. */
  above?: ComponentChildren;
}

/** How it is measured: one row once it is settled, all the choices when it is not. */
export function MethodPicker<M extends string>(props: Props<M>) {
  const { name, legend, method, methods, order, picture, draft, change, above } = props;
  // Until the choice was ever made it lies open.
  const [open, setOpen] = useState(draft.fields.method_chosen !== "yes");
  const { label, how } = methods[method];
  return (
    <div class="picker">
      {open ? (
        <>
          {above}
          <Choice
            name={name}
            legend={legend}
            value={method}
            onValue={(id) => change({ method: id, ...withField("method_chosen", "yes") })}
            onTap={() => setOpen(false)}
            options={order.map((id) => ({ id, label: methods[id].label, picture: picture(id) }))}
          />
        </>
      ) : (
        <button
          type="button"
          class="picker-row"
          aria-label={`${text.method}: ${label}. ${text.changeMethod}`}
          onClick={() => setOpen(true)}
        >
          {picture(method)}
          <span>
            <strong>{label}</strong>
            <span class="picker-change">{text.changeMethod}</span>
          </span>
        </button>
      )}
      <p class="how">{how}</p>
    </div>
  );
}
