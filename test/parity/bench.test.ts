import { specs } from "../../src/functions/index.ts";
import { type BenchPage, type Stand, stand } from "../bench/stand.ts";
import { bare } from "./answer.ts";
import { typedInto } from "./held.ts";
import { benchHost, tryOut } from "./hosts.ts";
import { type Input, inputs } from "./inputs.ts";

const COUNT = 4 * specs.length;
const BATCH = 102;
const SEED = 731;

let bench: Stand;
let page: BenchPage;
beforeAll(async () => {
  bench = await stand();
  page = await bench.page();
}, 120_000);
afterAll(() => bench?.close());

test("the bench in a browser gives the same answer as the bare call", async () => {
  expect(await tryOut(benchHost(page), inputs(COUNT, SEED), BATCH)).toEqual({ inputs: COUNT, differences: [] });
  expect(page.trouble).toEqual([]);
}, 180_000);

const isLone = ({ given }: Input): boolean => given.length === 2 && given.every((one) => one?.rows.length === 1 && one.rows[0]!.length === 1);

function numberOf(call: Input): number | undefined {
  const answer = bare(call);
  const cell = "rows" in answer ? answer.rows[0]![0] : undefined;
  return typeof cell === "number" ? cell : undefined;
}

test("so it does where each cell is typed with the keyboard", async () => {
  const call = [...inputs(2000, SEED)].find((one) => isLone(one) && numberOf(one) !== undefined)!;
  await page.page.evaluate(() => void window.crosshatchBench!.model.dispatch("CREATE_SHEET", { sheetId: "typed", name: "Typed", position: 0 }));
  await page.page.locator(".o-sheet", { hasText: "Typed" }).click();
  for (const [i, one] of call.given.entries()) await page.type(`A${i + 1}`, typedInto(one!.rows[0]![0]!));
  await page.type("A4", `=HATCH.${call.spec.name}(A1,A2)`);
  expect(await page.value("Typed!A4")).toBe(numberOf(call));
}, 60_000);
