import { Choice } from "../../controls/choice.tsx";
import { LengthField } from "../../controls/length-field.tsx";
import { Segments } from "../../controls/segments.tsx";
import { unitOf } from "../../store/settings.ts";
import { lengthText } from "../../units/format.ts";
import type { FormProps } from "../bench.ts";
import { withField } from "../draft.ts";
import { typedLength } from "./ask.ts";
import { centreFromChange, centreFromMandrels, type Way } from "./centre.ts";
import { CentrePicture } from "./centre-picture.tsx";
import { CENTRE_WAYS, type CentreWay, text } from "./meta.ts";

/** Where the shafts are now: the new distance, how far they moved, or mandrels in the bores. */
export function BoredFields(props: FormProps) {
  const { draft, stand, change, problemAt } = props;
  const way = draft.fields.centre_way as CentreWay;
  const before = stand.drive?.centre_distance_mm;
  const length = (field: string, label: string, hint?: string) => (
    <LengthField
      key={field}
      field={field}
      label={label}
      value={draft.fields[field] ?? ""}
      onValue={(value) => change(withField(field, value))}
      hint={hint}
      problem={problemAt(field)?.text}
    />
  );
  return (
    <>
      <Choice
        name="centre-way"
        legend={text.centreWay}
        value={way}
        onValue={(id) => change(withField("centre_way", id))}
        options={CENTRE_WAYS.map((id) => ({
          id,
          label: text.centreWays[id],
          picture: <CentrePicture way={id} />,
        }))}
      />
      {way === "new" &&
        length(
          "new_centre_distance_mm",
          text.newCentre,
          before === undefined
            ? undefined
            : text.newCentreHint(lengthText(before, unitOf("new_centre_distance_mm"))),
        )}
      {way === "change" && (
        <>
          <Segments
            label={text.changeWay}
            ways={text.ways}
            chosen={draft.fields.change_way as Way}
            onChoose={(one) => change(withField("change_way", one))}
          />
          {length("centre_change_mm", text.change, text.changeHint)}
        </>
      )}
      {way === "mandrels" && (
        <>
          {length("mandrel_outer_mm", text.outer, text.outerHint)}
          {length("mandrel_first_mm", text.firstMandrel)}
          {length("mandrel_second_mm", text.secondMandrel)}
        </>
      )}
      <Worked {...props} />
    </>
  );
}

/** The sum as it would be written on paper. */
function Worked({ draft, stand }: FormProps) {
  const way = draft.fields.centre_way as CentreWay;
  const before = stand.drive?.centre_distance_mm;
  const show = (field: string) => (mm: number) => lengthText(mm, unitOf(field));
  let sum = "";
  if (way === "mandrels") {
    const [outer, first, second] = [
      "mandrel_outer_mm",
      "mandrel_first_mm",
      "mandrel_second_mm",
    ].map((field) => typedLength(draft, field));
    if (outer === undefined || first === undefined || second === undefined) return null;
    const as = show("mandrel_outer_mm");
    const centre = centreFromMandrels(outer, first, second);
    sum = text.worked(as(outer), as(first), as(second), as(centre));
  } else if (way === "change") {
    const change = typedLength(draft, "centre_change_mm");
    if (change === undefined || before === undefined) return null;
    const as = show("centre_change_mm");
    const to = draft.fields.change_way as Way;
    const centre = centreFromChange(before, change, to);
    sum = text.workedChange(as(before), to === "closer" ? "−" : "+", as(change), as(centre));
  } else return null;
  return <p class="worked num">{sum}</p>;
}
