/** What else people call what a screen is for, to find it by; fetched at the first letter typed. */
import { words } from "../words/words.ts";

export const trade = words("home.trade", {
  wear: "stretch stretched elongation worn used chain length pitch caliper pins",
  slack: "tight loose tension play backlash lash sag movement crank rock noise rattle timing chain",
  heat: "temperature hot cold warm expansion aluminium iron block line bore running",
  gear: "sprocket teeth tooth hooked worn pins over root",
  combined: "together estimate all readings agree disagree",
  tdc: "top dead centre degree wheel piston stop dial indicator number one",
  cam: "degree wheel camshaft centreline centerline advance retard valve timing events intake exhaust",
  adjust: "keyway key bushing offset vernier dowel advance retard degrees step gear",
  lift: "lobe profile lifter follower tappet dial duration ramp nose camshaft",
  rockers: "rocker arm ratio roller tip pushrod lift",
  clearance: "piston valve to clay drop reliefs deck compression ratio contact",
  shelf: "chain gear set stock tag label scan used parts",
  fit: "fitting trial which chain gears match rank best",
  plan: "running in break in bedding oil mileage schedule timer drain customer card",
  forecast: "oil wear life distance hours how long prediction next reading",
  spark: "ignition timing scatter light strobe advance distributor knock",
  gain: "power horsepower loss friction expected worth",
  pulls: "how many runs repeats dyno detect difference",
  sessions:
    "dyno power torque horsepower correction weather barometer air curve proof compare runs",
  torsion: "torsional vibration twist harmonics resonance damper",
  builds: "engine record history notes parts sheet print",
  saved: "readings history kept earlier measurements",
  drive: "engine centre distance teeth links pitch data",
  files: "export import backup share csv",
  methods: "formula source proof standard published check how",
});
