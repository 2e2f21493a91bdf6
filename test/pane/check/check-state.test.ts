import type { CheckResult } from "../../../src/check/finding.ts";
import { type CheckEvent, type CheckState, canStop, FIRST_RUN, isCheap, isStale, stateAfter } from "../../../src/pane/check/check-state.ts";

const result: CheckResult = { findings: [], rowsIn: 1, checked: 1, refused: 0, inputs: 1 };
const started: CheckEvent = { type: "started", work: "reading" };
const checked: CheckEvent = {
  type: "checked",
  checked: { result, findings: null, sheets: ["Bores"], unmapped: "", marksAreOld: false, took: 20 },
  announcement: "Checked.",
};
const changed: CheckEvent = { type: "changed" };
const reached = (...events: CheckEvent[]): CheckState => events.reduce(stateAfter, FIRST_RUN);

describe("a result is of an earlier sheet", () => {
  test("never before the first check", () => {
    expect(isStale(reached(changed))).toBe(false);
    expect(isStale(reached(changed, started, checked))).toBe(false);
  });

  test("when the sheet changed after it", () => {
    expect(isStale(reached(started, checked, changed))).toBe(true);
  });

  test("when the sheet changed while it was being made", () => {
    expect(isStale(reached(started, changed, { type: "read" }, checked))).toBe(true);
  });

  test("until the sheet is checked again", () => {
    expect(isStale(reached(started, checked, changed, started, checked))).toBe(false);
  });

  test("still, when checking again was refused", () => {
    const state = reached(started, checked, changed, started, { type: "refused", sentence: "No." });
    expect(isStale(state)).toBe(true);
    expect(state).toMatchObject({ result, refusal: "No.", work: null });
  });
});

test("starting anything takes the last notice and refusal away", () => {
  const before = reached(started, checked, { type: "done", notice: "2 cells marked." }, { type: "aside", refusal: "No." });
  expect(before).toMatchObject({ notice: "2 cells marked.", announcement: "Checked.", refusal: "No." });
  expect(stateAfter(before, { type: "started", work: "marking" })).toMatchObject({ notice: "", announcement: "", refusal: "", result });
});

test("a cell that cannot be selected does not end other work", () => {
  expect(reached(started, { type: "aside", refusal: "No." })).toMatchObject({ work: "reading", refusal: "No." });
});

describe("stopping a check", () => {
  test("keeps the earlier result and says so, or says that nothing was checked", () => {
    expect(reached(started, checked, started, { type: "read" }, { type: "came", share: 0.4 }, { type: "stopped" })).toMatchObject({
      work: null,
      result,
      notice: "Stopped. These are the findings of the check before.",
    });
    expect(reached(started, { type: "stopped" })).toMatchObject({ work: null, result: null, notice: "Stopped. Nothing was checked." });
  });

  test("leaves the earlier result as stale as it was", () => {
    expect(isStale(reached(started, checked, changed, started, { type: "stopped" }))).toBe(true);
    expect(isStale(reached(started, checked, started, { type: "stopped" }))).toBe(false);
  });

  test("is for checks alone: marks are one step of the sheet's", () => {
    expect([canStop("reading"), canStop("checking"), canStop("marking"), canStop("unmarking"), canStop(null)]).toEqual([true, true, false, false, false]);
  });
});

test("how far a check is begins anew with each", () => {
  expect(reached(started, { type: "read" }, { type: "came", share: 0.4 }).share).toBe(0.4);
  expect(reached(started, { type: "came", share: 0.4 }, checked, started).share).toBeNull();
});

describe("a check that is made again by itself", () => {
  test("is one that took half a second at most", () => {
    const slow: CheckEvent = {
      type: "checked",
      checked: { result, findings: null, sheets: [], unmapped: "", marksAreOld: false, took: 501 },
      announcement: "",
    };
    expect([isCheap(FIRST_RUN), isCheap(reached(started, checked)), isCheap(reached(started, slow))]).toEqual([false, true, false]);
  });

  test("is nothing to be seen until it has a result, and counts from where it read", () => {
    const state = reached(started, checked, changed, { type: "rereading" });
    expect(state.work).toBeNull();
    expect(isStale(stateAfter(state, checked))).toBe(false);
    expect(isStale(stateAfter(stateAfter(state, changed), checked))).toBe(true);
  });

  test("is not made again once it has failed", () => {
    const state = reached(started, checked, changed, { type: "rereading" }, { type: "not reread" });
    expect([isStale(state), isCheap(state), state.refusal]).toEqual([true, false, ""]);
  });
});
