import { runInNewContext } from "node:vm";
import { HostRefusal, isRefusal } from "../../src/workbook/port.ts";
import { noSheet } from "../../src/workbook/refusals.ts";

test("a refusal is known by its name, also when it comes from another page", () => {
  expect(isRefusal(noSheet("Bores"))).toBe(true);
  const foreign = runInNewContext('Object.assign(new Error("No."), { name: "HostRefusal" })');
  expect(foreign).not.toBeInstanceOf(HostRefusal);
  expect(isRefusal(foreign)).toBe(true);
});

test("nothing else is a refusal", () => {
  for (const other of [new Error("No."), new TypeError("No."), "HostRefusal", null, undefined]) expect(isRefusal(other)).toBe(false);
});
