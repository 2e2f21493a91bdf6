import type { CheckResult } from "../../src/buildsheet/finding.ts";
import { type CheckEvent, type CheckState, FIRST_RUN, isStale, next } from "../../src/pane/check-state.ts";

const result: CheckResult = { findings: [], rowsIn: 1, checked: 1, refused: 0, inputs: 1 };
const started: CheckEvent = { type: "started", work: "reading" };
const checked: CheckEvent = { type: "checked", result, announcement: "Checked." };
const changed: CheckEvent = { type: "changed" };
const stateAfter = (...events: CheckEvent[]): CheckState => events.reduce(next, FIRST_RUN);

describe("a result is of an earlier sheet", () => {
  test("never before the first check", () => {
    expect(isStale(stateAfter(changed))).toBe(false);
    expect(isStale(stateAfter(changed, started, checked))).toBe(false);
  });

  test("when the sheet changed after it", () => {
    expect(isStale(stateAfter(started, checked, changed))).toBe(true);
  });

  test("when the sheet changed while it was being made", () => {
    expect(isStale(stateAfter(started, changed, { type: "read" }, checked))).toBe(true);
  });

  test("until the sheet is checked again", () => {
    expect(isStale(stateAfter(started, checked, changed, started, checked))).toBe(false);
  });

  test("still, when checking again was refused", () => {
    const state = stateAfter(started, checked, changed, started, { type: "refused", sentence: "No." });
    expect(isStale(state)).toBe(true);
    expect(state).toMatchObject({ result, refusal: "No.", work: null });
  });
});

test("starting anything takes the last notice and refusal away", () => {
  const before = stateAfter(started, checked, { type: "done", notice: "2 cells marked." }, { type: "aside", refusal: "No." });
  expect(before).toMatchObject({ notice: "2 cells marked.", announcement: "Checked.", refusal: "No." });
  expect(next(before, { type: "started", work: "marking" })).toMatchObject({ notice: "", announcement: "", refusal: "", result });
});

test("a cell that cannot be selected does not end other work", () => {
  expect(stateAfter(started, { type: "aside", refusal: "No." })).toMatchObject({ work: "reading", refusal: "No." });
});
