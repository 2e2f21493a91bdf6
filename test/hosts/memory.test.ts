import { MEMORY_ABILITIES, type MemoryCell, memoryHost } from "../../src/hosts/memory.ts";
import type { CellAddress } from "../../src/workbook/address.ts";
import { hostContract } from "./contract.ts";
import { DESCRIBED } from "./spec-sample.ts";
import type { Called, ContractCell, ContractSheet, Stage } from "./stage.ts";
import { wornInMemory } from "./worn.ts";

function given(cell: ContractCell): MemoryCell {
  if (typeof cell !== "object" || cell === null || "error" in cell || "formula" in cell) return cell;
  return "date" in cell ? cell.date : cell.spilled;
}

async function stage(sheets: ContractSheet[], called?: Called): Promise<Stage> {
  const host = memoryHost(
    sheets.map(({ name, cells }) => ({ name, cells: cells.map((line) => line.map(given)) })),
    "memory",
    called,
  );
  return {
    host,
    worn: async (sheet) => wornInMemory(host.described(sheet), DESCRIBED.names),
    pictures: async () => [...host.pictures()],
    fill: async (cell: CellAddress) => host.fill(cell),
    paint: async (cell: CellAddress, colour: string) => host.paint(cell, colour),
    type: async (cell: CellAddress, content: number | string) => host.type(cell, content),
    undo: async () => host.undo(),
    protect: async (sheet: string) => host.protect(sheet),
    selected: async () => host.active()!,
    again: async () => host,
  };
}

hostContract("memory", stage, MEMORY_ABILITIES);

test("a workbook in memory says its name", async () => {
  expect((await memoryHost([], "readings.csv").read()).name).toBe("readings.csv");
});
