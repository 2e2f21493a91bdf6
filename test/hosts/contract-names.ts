import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import type { Where } from "./contract.ts";
import type { Called, ContractSheet, Stage, Stagehand } from "./stage.ts";

const SHEETS: ContractSheet[] = [
  {
    name: "Limits",
    cells: [
      ["Characteristic", "Lower", "Upper limit"],
      ["Taper", null, 0.05],
      ["End gap", 0.25, 0.5],
    ],
  },
  { name: "Bore book", cells: [[73.02], [73]] },
];

const RANGES: NonNullable<Called["names"]> = [
  { name: "TaperLimit", formula: "=Limits!$C$2" },
  { name: "First_bore", formula: "='Bore book'!$A$1:$A$2" },
];
const OTHERS: NonNullable<Called["names"]> = [
  { name: "Standard", formula: "=73" },
  { name: "Standard", sheet: "Bore book", formula: "=73.25" },
];
const TABLE = {
  name: "LimitList",
  sheet: "Limits",
  area: { row: 0, column: 0, rows: 3, columns: 3 },
  headerRows: 1,
  totalsRows: 0,
  columns: ["Characteristic", "Lower", "Upper limit"],
};

/** What formulas can call by name. */
export function naming(makeHost: Stagehand, where: Where): void {
  const read = async (called: Called): Promise<WorkbookSnapshot> => {
    const stage: Stage = await makeHost(SHEETS, called);
    const snapshot = await stage.host.read();
    await stage.close?.();
    return snapshot;
  };

  test("a name of cells comes with the cells that it stands for, each with its sheet and fixed", async () => {
    expect((await read({ names: RANGES })).names).toEqual(RANGES);
  });

  where("other names")("a name of one sheet and a name of a number come as they are", async () => {
    expect((await read({ names: [...RANGES, ...OTHERS] })).names).toEqual([...RANGES, ...OTHERS]);
  });

  where("tables")("a table comes with its place, its rows that are no data, and its headings", async () => {
    const totals = {
      ...TABLE,
      name: "Bores",
      sheet: "Bore book",
      area: { row: 0, column: 0, rows: 2, columns: 1 },
      headerRows: 0,
      totalsRows: 1,
      columns: ["Column1"],
    };
    expect((await read({ tables: [TABLE, totals] })).tables).toEqual([TABLE, totals]);
  });
}
