import { mountPane, type Pane } from "../../../src/pane/mount.tsx";
import { SCENES, type Scene, type SceneName } from "./scenes.ts";

/** What the tests reach into the page for. */
export interface Stage extends Scene {
  pane: Pane;
  /** Shows the pane over the same workbook once more, as after it was closed and opened. */
  again(): Promise<void>;
}

declare global {
  interface Window {
    stage: Stage;
  }
}

const scene = SCENES[(new URLSearchParams(location.search).get("scene") ?? "findings") as SceneName]();
const mount = () => mountPane(document.getElementById("pane")!, scene.host, scene.options);
window.stage = {
  ...scene,
  pane: mount(),
  async again() {
    this.pane.unmount();
    // What was typed last goes to the workbook first.
    await new Promise((resolve) => setTimeout(resolve));
    this.pane = mount();
  },
};
