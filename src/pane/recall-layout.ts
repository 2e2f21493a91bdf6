import type { Mapping } from "../buildsheet/layout/mapping.ts";
import type { SheetHost } from "../sheet/sheet-host.ts";
import { loadLayouts } from "./parts.ts";

/** The key under which a workbook keeps a layout; most keep none, and then nothing needs to be loaded to read it. */
const LAYOUT_KEY = "layout";

/** The layout of its own that a workbook keeps; `notes` say why one that is there cannot be used. */
export async function recallLayout(host: Pick<SheetHost, "recall">): Promise<{ mapping: Mapping | undefined; notes: readonly string[] }> {
  if (!(await host.recall(LAYOUT_KEY))) return { mapping: undefined, notes: [] };
  const { keptLayout } = await loadLayouts();
  return keptLayout(host);
}
