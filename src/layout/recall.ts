import type { SheetHost } from "../workbook/port.ts";
import { LAYOUT_KEY } from "../workbook/storage.ts";
import type { Mapping } from "./mapping.ts";

/** `keptLayout` for whoever wants to start at once: what reads a layout is only loaded where one is kept. */
export async function recallLayout(host: Pick<SheetHost, "loadText">): Promise<{ mapping: Mapping | undefined; notes: readonly string[] }> {
  if (!(await host.loadText(LAYOUT_KEY))) return { mapping: undefined, notes: [] };
  const { storedLayout } = await import("./mapping.ts");
  return storedLayout(host);
}
