/** The pane's page inside the bench: the host is the one that the bench has open. */
import { mountPane } from "../pane/mount.tsx";
import type {} from "./shared.ts";

const shared = window.parent.crosshatchBench;
if (!shared) throw new Error("The pane's page is shown by the bench; it has no workbook of its own.");
mountPane(document.getElementById("pane")!, shared.host);

addEventListener("dragover", (event) => event.preventDefault());
addEventListener("drop", (event) => {
  event.preventDefault();
  const [file] = event.dataTransfer?.files ?? [];
  if (file) void shared.openFile(file);
});

addEventListener("keydown", (event) => {
  if (event.key === "F6" && !event.ctrlKey && !event.altKey && !event.metaKey) {
    event.preventDefault();
    shared.goOn(event.shiftKey);
    return;
  }
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "s") return;
  event.preventDefault();
  void shared.save();
});
