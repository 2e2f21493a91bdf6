import { type Check, from } from "./check.ts";

/** Ring end gaps. */
export const RING_CHECKS: readonly Check[] = [
  ...from("ring end gap .004 in for each inch of bore", "common practice", [
    ["=HATCH.RINGGAPTARGET(4)", 0.016],
    ["=HATCH.RINGGAPTARGET(73)", 0.292],
  ]),
  ...from("a ring maker's published tip: at least .0035 in for each inch of bore", "read", [["=HATCH.RINGGAPTARGET(4, 0.0035)", 0.014]]),
  ...from("TM 9-2320-366-34: 4.134 in bore, top ring gap .016 to .026 in", "read", [
    ["=HATCH.VERDICT(HATCH.RINGGAPTARGET(4.134), 0.016, 0.026)", "within"],
    ["=HATCH.RINGGAPFILE(0.012, 0.016)", 0.004],
    ["=HATCH.RINGGAPFILE(0.016, 0.016)", 0],
    ["=HATCH.RINGGAPFILE(0.026, 0.016)", 0],
  ]),
  ...from("the gap grows by π × the growth of the bore: .001 in opens it by .00314 in", "computed", [["=HATCH.RINGGAPATBORE(0.016, 4, 4.001)", 0.01914, 5e-6]]),
  ...from("a bore .0012 in under size closes the gap by π × .0012 = .00377 in", "computed", [["=0.016-HATCH.RINGGAPATBORE(0.016, 4, 3.9988)", 0.00377, 5e-6]]),
];
