import type { SheetHost } from "../workbook/port.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "../workbook/storage.ts";
import type { Mapping } from "./mapping.ts";

/** `storedLayout` for whoever wants to start at once: what reads a layout is only loaded, by `load`, where one is kept. */
export async function recallLayout(
  host: Pick<SheetHost, "loadText">,
  load: () => Promise<Pick<typeof import("./mapping.ts"), "storedLayout">> = () => import("./mapping.ts"),
): Promise<{ mapping: Mapping | undefined; notes: readonly string[] }> {
  if (!(await host.loadText(LAYOUT_KEY)) && !(await host.loadText(LAYOUT_ON_SHEET))) return { mapping: undefined, notes: [] };
  const { storedLayout } = await load();
  return storedLayout(host);
}
