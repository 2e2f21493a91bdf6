import { LAYOUT_KEY } from "../../buildsheet/layout/key.ts";
import type { Mapping } from "../../buildsheet/layout/mapping.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { loadLayouts } from "./parts.ts";

/** The layout of its own that a workbook keeps; `notes` say why one that is there cannot be used. */
export async function recallLayout(host: Pick<SheetHost, "recall">): Promise<{ mapping: Mapping | undefined; notes: readonly string[] }> {
  if (!(await host.recall(LAYOUT_KEY))) return { mapping: undefined, notes: [] };
  const { keptLayout } = await loadLayouts();
  return keptLayout(host);
}
