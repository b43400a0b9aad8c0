import { text } from "./strings.ts";
import { ThisDevice } from "./this-device.tsx";

/** What a pairing link opens: the code is filled in, and what it does is said before it is done. */
export function PairScreen() {
  return (
    <div class="page">
      <h1>{text.title}</h1>
      <ThisDevice />
    </div>
  );
}
