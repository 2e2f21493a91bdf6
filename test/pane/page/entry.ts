import { mountPane, type Pane } from "../../../src/pane/mount.tsx";
import { SCENES, type Scene, type SceneName } from "./scenes.ts";

/** What the tests reach into the page for. */
export interface Stage extends Scene {
  pane: Pane;
}

declare global {
  interface Window {
    stage: Stage;
  }
}

const scene = SCENES[(new URLSearchParams(location.search).get("scene") ?? "findings") as SceneName]();
window.stage = { ...scene, pane: mountPane(document.getElementById("pane")!, scene.host, scene.options) };
