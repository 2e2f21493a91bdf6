import { signTest } from "../../src/compare/hints.ts";
import { compare, reading } from "./stand.ts";

// R 4.2.2: binom.test(1, 9)$p.value, binom.test(0, 8)$p.value, binom.test(5, 24)$p.value, binom.test(4, 8)$p.value.
test.each([
  [1, 9, 0.0390625],
  [0, 8, 0.0078125],
  [5, 24, 0.006610751],
  [4, 8, 1],
  // By the normal law with half a step: 2 × Φ((460.5 − 500) ÷ √250); half of many is as likely as can be.
  [460, 1000, 0.01248],
  [8222, 16319, 1],
])("%p of %p are as few by chance in %p", (few, all, p) => {
  expect(signTest(few, all)).toBeCloseTo(p, all > 500 ? 4 : 8);
});

const hint = /which wear does not do/;
const bores = (moved: readonly number[]) => {
  const side = (at: number) => moved.map((by, i) => reading(73 + i / 100 + at * by, { cylinder: `${i + 1}` }));
  return compare(side(0), side(1)).notes.filter((note) => hint.test(note));
};

test("so many bores that have grown smaller are a hint at the gauge, and no verdict", () => {
  expect(bores(Array(8).fill(-0.001))).toEqual(["8 of 8 places of bore are smaller, which wear does not do: another part, the master, or a temperature?"]);
  expect(bores(Array(7).fill(-0.001))).toEqual([]);
  expect(bores(Array(12).fill(0.001))).toEqual([]);
});

test("one bore that is smaller beyond all doubt is a hint as well", () => {
  expect(bores([-0.02, 0.001, 0.001])).toEqual(["1 of 3 places of bore is smaller, which wear does not do: another part, the master, or a temperature?"]);
});

test("where wear may go either way, nearly all places that go one way are a hint", () => {
  const gaps = (by: number) =>
    Array.from({ length: 9 }, (_, i) => reading(0.2 + i / 100 + by, { cylinder: `${i + 1}`, characteristic: "valve clearance", position: "inlet" }));
  const { notes } = compare(gaps(0), gaps(-0.001));
  expect(notes).toContain("9 of 9 places of inlet valve clearance are smaller: all alike, or the master, or a temperature?");
});
