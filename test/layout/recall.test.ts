import { memoryHost } from "../../src/hosts/memory.ts";
import { type Mapping, storedLayout, storeMapping } from "../../src/layout/mapping.ts";
import { recallLayout } from "../../src/layout/recall.ts";

const host = () => memoryHost([{ name: "Bores", cells: [[73.01]] }]);
const NONE = { engine: undefined, characteristic: undefined, unit: undefined };
const MAPPING: Mapping = {
  version: 1,
  ranges: [
    {
      ...{ sheet: "Bores", row: 0, column: 0, rows: 1, columns: 1, rowHeads: [], columnHeads: [], fixed: { role: "value" }, otherwise: NONE },
      ...{ records: "cell", without: { rows: [], columns: [] }, grows: false, signature: [] },
    },
  ],
};

test("a workbook without a layout of its own has none, and nothing is said", async () => {
  expect(await recallLayout(host())).toEqual({ mapping: undefined, notes: [] });
});

test("a layout that is kept, or why it cannot be used, is recalled as by whoever reads layouts", async () => {
  const kept = host();
  await storeMapping(kept, MAPPING);
  expect((await recallLayout(kept)).mapping?.ranges).toHaveLength(1);
  const damaged = host();
  await damaged.storeText("layout", "{");
  expect((await recallLayout(damaged)).notes).toEqual(["the saved layout of this workbook is damaged: set it up again"]);
  for (const one of [kept, damaged]) expect(await recallLayout(one)).toEqual(await storedLayout(one));
});
