import { Segments } from "../../controls/segments.tsx";
import type { FormProps } from "../bench.ts";
import { MovementField } from "../movement-field.tsx";
import { WindowFold } from "../window-fold.tsx";
import { BoredFields } from "./bored-fields.tsx";
import { HeatFields } from "./heat-fields.tsx";
import { type Part, text } from "./meta.ts";

export function HeatForm(props: FormProps) {
  const { draft, change } = props;
  const part = draft.method as Part;
  return (
    <>
      <Segments
        label={text.part}
        ways={text.parts}
        chosen={part}
        onChoose={(method) => change({ method })}
      />
      <MovementField
        {...props}
        label={part === "heat" ? text.movement : text.movementBefore}
        hint={text.movementHint}
      />
      {part === "heat" ? <HeatFields {...props} /> : <BoredFields {...props} />}
      <WindowFold {...props} />
    </>
  );
}
