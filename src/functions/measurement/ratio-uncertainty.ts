import { define, value } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { volume } from "../../core/inputs.ts";
import { propagated } from "../../math/propagation.ts";
import { COVERAGE_FACTOR } from "../wear/change-params.ts";

const u = (of: string) => volume(`expanded uncertainty U (k = 2) of ${of}; 0 where it is exact`).atLeast(0).optional();
const VOLUMES = ["swept", "chamber", "gasket", "deck", "piston"] as const;
const UNCERTAINTIES = { swept: "uSwept", chamber: "uChamber", gasket: "uGasket", deck: "uDeck", piston: "uPiston" } as const;

type Volumes = Record<(typeof VOLUMES)[number], number>;

/** U of a compression ratio from the U of each volume. Source: JCGM 100:2008 5.1.2 and 5.1.3, note 2 (each input moved by its u both ways). */
export const ratioUncertainty = define({
  name: "RATIOUNCERTAINTY",
  group: "measurement",
  role: "assists",
  summary: "Expanded uncertainty U of a compression ratio from the U of its volumes",
  definition: "2 × √ΣZ², Z = (ratio with one volume + U/2 − ratio with it − U/2) ÷ 2; ratio as COMPRESSIONRATIO",
  source: "JCGM 100:2008 (GUM), 5.1.2 and 5.1.3",
  params: {
    swept: volume("swept volume of one cylinder"),
    chamber: volume("combustion chamber in the head, measured by burette"),
    gasket: volume("compressed head gasket; blank where there is none").atLeast(0).optional(),
    deck: volume("deck space; negative for a piston that stands proud").unbounded().optional(),
    piston: volume("piston crown: dish positive, dome negative").unbounded().optional(),
    uSwept: u("swept"),
    uChamber: u("chamber"),
    uGasket: u("gasket"),
    uDeck: u("deck"),
    uPiston: u("piston"),
  },
  returns: value("expanded uncertainty U (k = 2) of the ratio"),
  examples: [
    { formula: "=HATCH.RATIOUNCERTAINTY(249.2, 24.1, 3.1, , , 0.3, 0.2, 0.1)", gives: 0.076122 },
    { formula: "=HATCH.RATIOUNCERTAINTY(249.2, {24.1;24.6}, , , , 0.3, {0.2;0})", gives: [[0.08671], [0.012195]] },
  ],
  notes: [
    "Every volume that is given needs its U: 0 is typed where it is exact, never left out.",
    "One reading of the bore is behind swept volume, gasket and deck: its error partly cancels, so that this is a little too wide.",
    "HATCH.UNCERTAINTY gives the U of repeated readings, HATCH.COMBINE that of a sum of volumes.",
  ],
  compute: (inputs) => {
    const volumes: Volumes = { swept: inputs.swept, chamber: inputs.chamber, gasket: inputs.gasket ?? 0, deck: inputs.deck ?? 0, piston: inputs.piston ?? 0 };
    if (!(ratioOf(volumes) > 1)) return refuse("chamber", inputs.chamber, "with gasket, deck and piston it leaves no clearance volume above 0");
    const uncertainties: number[] = [];
    for (const name of VOLUMES) {
      const given = inputs[UNCERTAINTIES[name]];
      const isLeftOut = inputs[name] === undefined && !given;
      if (given === undefined && !isLeftOut) return new Fault("missing", UNCERTAINTIES[name], undefined, `U of the ${name} volume, 0 where it is exact`);
      const half = (given ?? 0) / COVERAGE_FACTOR;
      if ([half, -half].some((by) => !(ratioOf({ ...volumes, [name]: volumes[name] + by }) > 1)))
        return refuse(UNCERTAINTIES[name], given, `it is as large as what it belongs to, and no ratio is left`);
      uncertainties.push(given ?? 0);
    }
    const ratio = (values: readonly number[]) => [ratioOf(Object.fromEntries(VOLUMES.map((name, i) => [name, values[i]!])) as unknown as Volumes)];
    return propagated(
      VOLUMES.map((name) => volumes[name]),
      uncertainties,
      ratio,
    )![0]!;
  },
});

/** No number where the clearance volume is not above 0. */
function ratioOf({ swept, chamber, gasket, deck, piston }: Volumes): number {
  const clearance = chamber + gasket + deck + piston;
  return clearance > 0 ? (swept + clearance) / clearance : Number.NaN;
}
