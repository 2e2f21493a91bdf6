import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, refuse, unlike } from "../../core/fault.ts";
import { length, temperature, text } from "../../core/inputs.ts";
import { coefficientOf } from "../measurement/materials.ts";

/** Iron begins to glow about here: nobody heats a part of an engine further for a fit. */
const HOTTEST = 600;

/** How hot the outer part must be to go over a shaft that stays cold. Sources: linear expansion; materials.ts for each coefficient. */
export const heatForFit = define({
  name: "HEATFORFIT",
  group: "shafts",
  role: "decides",
  summary: "Temperature to which the outer part of a press fit is heated so that it drops over the shaft, °C",
  definition: "room + (shaft + gap − hole) ÷ (hole × expansion coefficient), never below room",
  source: "linear expansion; coefficients: Callister & Rethwisch table B.6, D. Swyt J. Res. NIST 99(1)",
  params: {
    shaft: length("outside diameter of the shaft or pin, which stays at room temperature"),
    hole: length("inside diameter of the part to be heated, at room temperature"),
    gap: length("gap wanted for it to drop over freely, on the diameter").atLeast(0).chosen(),
    material: text("material of the heated part by name, or its expansion coefficient in millionths per K"),
    room: temperature("temperature of both when measured, in °C").default(20).chosen(),
  },
  returns: value("temperature of the outer part in °C; the room's where it goes over cold"),
  examples: [
    { formula: '=HATCH.HEATFORFIT(50.05, 50, 0.05, "steel")', gives: 193.913 },
    { formula: '=HATCH.HEATFORFIT({22.01;22.03}, 21.99, 0.04, "piston alloy", 18)', gives: [[154.425648], [199.900864]] },
  ],
  notes: [
    "Hot parts burn, and oil on them smokes and can catch fire: clean and dry first, gloves and face shield, nothing that burns near, and know where the part goes before it leaves the oven.",
    "Heat the whole part evenly, in an oven or oil bath: a torch warps and softens it. How hot a part may become, its maker's service manual says.",
    "It cools while it is carried and warms the shaft: type a gap that leaves time.",
    "A gap or a room temperature of 0 counts as typed.",
  ],
  compute: ({ shaft, hole, gap, material, room }) => {
    const coefficient = coefficientOf(material);
    if (coefficient instanceof Fault) return coefficient;
    const apart = unlike("shaft", shaft, "hole", hole);
    if (apart) return apart;
    const hot = decimal(room + Math.max(0, shaft + gap - hole) / (hole * coefficient));
    return isAbove(hot, HOTTEST) ? refuse("gap", gap, `it asks for ${Math.round(hot)} °C, and no part is heated beyond ${HOTTEST} for a fit`) : hot;
  },
});
