import type { ComponentType } from "preact";
import type { Bench } from "../benches/bench.ts";
import { benches } from "../benches/index.ts";
import { coreTrouble, warm } from "../core/client.ts";
import { loadShown } from "../home/all.ts";
import { HomeScreen } from "../home/screen.tsx";
import { Header } from "./header.tsx";
import { later } from "./later.tsx";
import { type Group, Nav, type Place } from "./nav.tsx";
import { route } from "./router.ts";
import { text } from "./strings.ts";
import { UpdateNotice } from "./update-notice.tsx";

// What is on the shelf is for the fit table, whose calculation loads beside the screen.
const ShelfScreen = later(async () => {
  void warm("fit");
  return (await import("../shelf/screen.tsx")).ShelfScreen;
});
const DriveScreen = later(async () => (await import("../screens/drive.tsx")).DriveScreen);
const SavedScreen = later(async () => (await import("../screens/saved.tsx")).SavedScreen);
const SettingsScreen = later(async () => (await import("../screens/settings.tsx")).SettingsScreen);
const PairScreen = later(async () => (await import("../device/pair-screen.tsx")).PairScreen);
const FitScreen = later(async () => {
  void warm("fit");
  return (await import("../shelf/fit/screen.tsx")).FitScreen;
});
const BuildsScreen = later(async () => (await import("../builds/screen.tsx")).BuildsScreen);
const BreakInScreen = later(async () => (await import("../breakin/screen.tsx")).BreakInScreen);
const SessionsScreen = later(async () => {
  void warm("correction");
  return (await import("../sessions/screen.tsx")).SessionsScreen;
});
const MethodsScreen = later(async () => (await import("../methods/screen.tsx")).MethodsScreen);
const ConflictScreen = later(async () => (await import("../screens/conflict.tsx")).ConflictScreen);
const FilesScreen = later(async () => (await import("../files/screen.tsx")).FilesScreen);

/** Screens that the bar does not lead to. */
const asides: Record<string, View> = {
  settings: SettingsScreen,
  pair: PairScreen,
  conflict: ConflictScreen,
};

type View = ComponentType & { load?(): Promise<void> };

interface Screen extends Place {
  group: Bench["meta"]["group"] | "record";
  View: View;
}

const screens: Screen[] = [
  {
    id: "shelf",
    label: text.shelf,
    short: text.shelfShort,
    icon: "shelf",
    group: "choose",
    View: ShelfScreen,
  },
  {
    id: "fit",
    label: text.fit,
    short: text.fitShort,
    icon: "fit",
    group: "choose",
    View: FitScreen,
  },
  { id: "plan", label: text.plan, icon: "breakin", group: "breakin", View: BreakInScreen },
  ...benches.map(({ meta, View }) => ({ ...meta, View })),
  {
    id: "sessions",
    label: text.sessions,
    short: text.sessionsShort,
    icon: "session",
    group: "prove",
    View: SessionsScreen,
  },
  {
    id: "builds",
    label: text.builds,
    short: text.buildsShort,
    icon: "record",
    group: "record",
    View: BuildsScreen,
  },
  { id: "saved", label: text.saved, icon: "saved", group: "record", View: SavedScreen },
  { id: "drive", label: text.drive, icon: "drive", group: "record", View: DriveScreen },
  { id: "files", label: text.files, icon: "files", group: "record", View: FilesScreen },
  { id: "methods", label: text.methods, icon: "methods", group: "record", View: MethodsScreen },
];

const listed = (group: Screen["group"]) => screens.filter((one) => one.group === group);
const day = ["measure", "choose", "set", "breakin", "prove", "record"] as const;
const groups: Group[] = day.map((id) => ({
  id,
  label: text[id],
  icon: id,
  places: listed(id),
}));
const bar: (Place | Group)[] = groups.filter((one) => one.places.length > 0);

/** The first screen, and the one for an address that leads nowhere. */
function Home() {
  return <HomeScreen groups={groups.filter((one) => one.places.length > 0)} />;
}

/** Where the address leads. */
function here(): { id: string; View: View } {
  const id = route.value[0] ?? "";
  const screen = screens.find((one) => one.id === id);
  return { id: asides[id] || screen ? id : "", View: asides[id] ?? screen?.View ?? Home };
}

/** Begins to load the screen that is about to be shown, while the records are read. */
export async function loadAhead(): Promise<void> {
  await here().View.load?.();
}

/** Completes what the first paint needs, now that the records are read. */
export async function beforeFirstPaint(): Promise<void> {
  // A line that came later would push the rest down.
  if (here().View === Home) await loadShown();
}

export function App() {
  const { id, View } = here();
  return (
    <div class="app">
      <button type="button" class="skip" onClick={skip}>
        {text.skip}
      </button>
      <Header />
      <main id="screen" tabIndex={-1}>
        {coreTrouble.value && (
          <p class="trouble" role="alert">
            {text.coreTrouble} {coreTrouble.value}
          </p>
        )}
        <UpdateNotice />
        <View />
      </main>
      <Nav items={bar} current={id} />
    </div>
  );
}

function skip(): void {
  document.getElementById("screen")?.focus();
}
