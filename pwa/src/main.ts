/**
 * The page's own beginning: its words come before the app, which reads them while it is loaded. What the
 * screen needs is fetched meanwhile.
 */
import { fetchAhead } from "./shell/ahead.ts";
import { loadPack } from "./words/pack.ts";
import "./styles/tokens.css";
import "./styles/shell.css";
import "./styles/nav.css";
import "./styles/controls.css";
import "./styles/bench.css";
import "./styles/benches.css";
import "./styles/result.css";
import "./styles/reasons.css";
import "./styles/drawing.css";
import "./styles/screens.css";
import "./styles/home.css";
import "./styles/shelf.css";
import "./styles/print.css";

fetchAhead();
void loadPack().then(() => import("./start.tsx"));
