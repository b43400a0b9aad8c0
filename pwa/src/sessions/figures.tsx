import type { CorrectionResult } from "../core/results.ts";
import { OriginBadge, Source } from "../result/origin.tsx";
import type { Session } from "../store/records.ts";
import { settings } from "../store/settings.ts";
import { fixed } from "../units/format.ts";
import { powerText, torqueText } from "../units/power.ts";
import { text } from "./strings.ts";

interface Peaks {
  power_kw?: number | null | undefined;
  torque_nm?: number | null | undefined;
  power_speed_rpm?: number | null | undefined;
  torque_speed_rpm?: number | null | undefined;
}

/** Power and torque in the user's units, with the speeds they were at. */
export function peaksText(peaks: Peaks): string {
  const { power, torque } = settings.value;
  const at = (rpm: number | null | undefined) =>
    typeof rpm === "number" ? ` ${text.at(fixed(rpm, 0))}` : "";
  const said = [];
  if (typeof peaks.power_kw === "number") {
    said.push(powerText(peaks.power_kw, power) + at(peaks.power_speed_rpm));
  }
  if (typeof peaks.torque_nm === "number") {
    said.push(torqueText(peaks.torque_nm, torque) + at(peaks.torque_speed_rpm));
  }
  return said.join(", ");
}

interface Props {
  /** As the dyno showed them. */
  peaks: Peaks;
  figuresAre: string;
  standard: Session["standard"];
  /** What the core says; null without air, or while it is working. */
  found: CorrectionResult | null;
  hasAir: boolean;
}

/** A run's figures, as read and as corrected: always both. */
export function Figures({ peaks, figuresAre, standard, found, hasAir }: Props) {
  const speeds = {
    power_speed_rpm: peaks.power_speed_rpm,
    torque_speed_rpm: peaks.torque_speed_rpm,
  };
  const read = figuresAre === "observed" ? peaks : found ? { ...found.observed, ...speeds } : null;
  const wanted = standard ?? (figuresAre === "observed" ? null : figuresAre);
  const row = found?.standards.find((one) => one.standard === wanted);
  const name = (id: string) => text.standards[id] ?? id;
  const kept = wanted === figuresAre ? peaks : row ? { ...row, ...speeds } : null;
  return (
    <>
      <dl class="figures">
        <dt>{text.asRead}</dt>
        <dd>{read ? peaksText(read) : text.asReadUnknown}</dd>
        {wanted && (
          <>
            <dt>{text.corrected(name(wanted))}</dt>
            <dd>
              {kept ? peaksText(kept) : hasAir ? "…" : text.noAir}
              {row && <span class="small"> {text.factor(fixed(row.factor, 4))}</span>}
            </dd>
          </>
        )}
      </dl>
      {figuresAre !== "observed" && <p class="small">{text.dynoHad(name(figuresAre))}</p>}
      {[...(found?.warnings ?? []), ...(row?.warnings ?? [])].map((one) => (
        <p key={one.code} class="small doubt">
          {one.text} {one.origin && <OriginBadge origin={one.origin} />}{" "}
          {one.source && <Source source={one.source} address="" />}
        </p>
      ))}
    </>
  );
}
