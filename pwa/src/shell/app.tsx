import type { ComponentType } from "preact";
import { benches } from "../benches/index.ts";
import { coreTrouble } from "../core/client.ts";
import { DriveScreen } from "../screens/drive.tsx";
import { SavedScreen } from "../screens/saved.tsx";
import { SettingsScreen } from "../screens/settings.tsx";
import { Header } from "./header.tsx";
import { Nav, type Place } from "./nav.tsx";
import { route } from "./router.ts";
import { text } from "./strings.ts";
import { UpdateNotice } from "./update-notice.tsx";

interface Screen extends Place {
  View: ComponentType;
}

const screens: Screen[] = [
  ...benches.map(({ meta, View }) => ({ id: meta.id, label: meta.label, icon: meta.icon, View })),
  { id: "drive", label: text.drive, icon: "drive", View: DriveScreen },
  { id: "saved", label: text.saved, icon: "saved", View: SavedScreen },
];

export function App() {
  const id = route.value[0];
  const screen = screens.find((one) => one.id === id) ?? screens[0];
  const View = id === "settings" ? SettingsScreen : screen?.View;
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
        {View && <View />}
      </main>
      <Nav places={screens} current={id === "settings" ? "settings" : (screen?.id ?? "")} />
    </div>
  );
}

function skip(): void {
  document.getElementById("screen")?.focus();
}
