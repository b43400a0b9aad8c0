/** What stands behind the number of a setting bench; loaded when there is something to show. */
import type { SettingResult } from "../../core/results.ts";
import { Assumed, Budget, Notes } from "../../result/notes.tsx";
import type { PicturesProps, ShownProps } from "../../result/shows.ts";
import { text as shared } from "../../result/strings.ts";
import { AdjustDetails } from "./adjust-details.tsx";
import { CamDetails } from "./cam-details.tsx";
import { TimingPicture } from "./timing-picture.tsx";
import { TurnPicture } from "./turn-picture.tsx";
import { WheelPicture } from "./wheel-picture.tsx";
import "../../styles/setting.css";

export function Reasons({ result }: ShownProps<SettingResult>) {
  const { why, next_step } = result.verdict;
  return (
    <>
      <section class="panel reasons">
        <p class="next">
          <strong>{shared.next}</strong> {next_step}
        </p>
        <p>
          <strong>{shared.why}</strong> {why}
        </p>
        {result.calc === "adjust" && <p>{result.direction.words}</p>}
      </section>
      <Notes result={result} />
    </>
  );
}

export function Pictures({ result }: PicturesProps<SettingResult>) {
  if (!result) return null;
  if (result.calc === "tdc") return <WheelPicture result={result} />;
  if (result.calc === "cam") return <TimingPicture result={result} />;
  return <TurnPicture result={result} />;
}

export function Details({ result, length }: ShownProps<SettingResult>) {
  return (
    <>
      {result.calc === "cam" && <CamDetails result={result} />}
      {result.calc === "adjust" && <AdjustDetails result={result} />}
      {result.calc !== "adjust" && <Budget measured={result.measured} length={length} />}
      <Assumed result={result} />
    </>
  );
}
