import { fileHost } from "../../src/hosts/file.ts";
import type { CellFile } from "../../src/xlsx/model.ts";
import { agrees, short } from "../reference/checks/check.ts";
import { CHECKS } from "../reference/checks/index.ts";

const every = Object.values(CHECKS).flat();
const named = every.map((check) => [short(check), check] as const);

describe("in the cells of a calculated workbook", () => {
  let shown: unknown[];

  beforeAll(async () => {
    const cells = every.map(({ formula, at }, row): CellFile => {
      const bare = formula.slice(1);
      return { row, column: 0, value: null, formula: at ? `INDEX(${bare},${at})` : bare, array: { rows: 1, columns: 1, grows: false } };
    });
    const host = fileHost(
      { sheets: [{ name: "Checks", hidden: false, cells, hiddenRows: [] }], names: [], tables: [], from1904: false, storedTexts: new Map() },
      "checks.xlsx",
    );
    shown = (await host.read()).sheets[0]!.values.map(([cell]) => cell);
    expect(host.notes()).toEqual([]);
  });

  test.each(named.map(([name, check], i) => [name, check, i] as const))("%s", (_, check, i) => {
    if (check.within === undefined) expect(shown[i]).toBe(check.expect);
    expect(agrees(check, shown[i]) || shown[i]).toBe(true);
  });
});
