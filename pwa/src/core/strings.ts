/** Words about the calculations themselves. */
import { words } from "../words/words.ts";

export const text = words("core", {
  noThread: "The calculating thread could not be loaded.",
});
