import type { Finding } from "../../src/check/finding.ts";

/** A finding of which a test says only what it is about. */
export const finding = (given: Partial<Finding>): Finding => ({
  kind: "near limit",
  cell: { sheet: "Bores", row: 1, column: 1 },
  label: "",
  value: null,
  lower: null,
  upper: null,
  margin: null,
  verdict: null,
  details: {},
  sentence: "",
  ...given,
});
