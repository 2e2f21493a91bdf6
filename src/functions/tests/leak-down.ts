import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { swapped } from "../../core/fault.ts";
import { pressure } from "../../core/inputs.ts";

/** Leakage of a cylinder under air, in per cent of the supply. Source: FAA AC 43.13-1B ¶8-14. */
export const leakDown = define({
  name: "LEAKDOWN",
  group: "tests",
  role: "measures",
  summary: "Leak-down of a cylinder under regulated air, in per cent",
  definition: "(supply − held) ÷ supply × 100",
  source: "FAA AC 43.13-1B paragraph 8-14, differential pressure test",
  params: {
    supply: pressure("regulated pressure that goes in").chosen(),
    held: pressure("pressure that the cylinder holds, in the unit of the supply; 0 for one that holds nothing").atLeast(0),
  },
  returns: value("leakage in per cent of the supply"),
  examples: [
    { formula: "=HATCH.LEAKDOWN(80, 60)", gives: 25 },
    { formula: "=HATCH.LEAKDOWN(80, {78;70;60})", gives: [[2.5], [12.5], [25]] },
  ],
  notes: [
    "Under air the engine can turn over with great force: piston at top dead centre, crank held, hands, tools and clothing clear of all that turns.",
    "Ignition off and fuel shut off; raise the pressure slowly, and let it off before loosening anything.",
    "The orifice sets the figure: .040 in for bores under 5.00 in, otherwise .060 in (same paragraph). Compare only tests by one tester.",
    "Listen: air at the intake or the exhaust points at that valve, at the breather at the rings, bubbles in the coolant at the head gasket.",
    'A cylinder that holds nothing at all leaks 100 %. Some sheets hand an empty cell over as 0 too: write =IF(D4="","",HATCH.LEAKDOWN(C4, D4)).',
  ],
  compute: ({ supply, held }) => (isAbove(held, supply) ? swapped("held", held, "supply", supply) : decimal(((supply - held) / supply) * 100)),
});
