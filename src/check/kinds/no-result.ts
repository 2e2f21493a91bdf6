import { counted } from "../../core/number-text.ts";
import { choiceField, countField, defineKind } from "./define-kind.ts";

/** Cells of ours that have no value at present. What they judge is judged all the same, by what their formulas give. Told once for each sheet and reason. */
export const noResultKind = defineKind({
  name: "no result",
  plural: "cells without a result",
  order: 36,
  meaning: "cells with our functions that have no value: still calculating, our functions not known to the program, or no room for the results",
  mark: "doubt",
  isOfReading: false,
  fields: {
    why: choiceField(["still calculating", "functions not known", "no room"], "why there is none"),
    cells: countField("how many such cells the sheet has", "cell"),
  },
  cause: (_, { why }) => `cells with our functions have no value on several sheets: ${why}`,
  sentence(_, { why, cells }) {
    const judged = "What they judge is judged here by what their formulas give";
    const these = `${counted(cells, "cell")} with our functions`;
    switch (why) {
      case "still calculating":
        return `${these} of this sheet, this one first, ${cells === 1 ? "was" : "were"} still being calculated. ${judged}`;
      case "functions not known":
        return `${these} of this sheet, this one first, ${cells === 1 ? "shows" : "show"} #NAME?: Excel does not know our functions here. Open the pane with its button on the Home tab, then press Repair formulas; where there is no button, the add-in is not installed or is blocked (README, "In Excel"); in LibreOffice install the extension. ${judged}`;
      default:
        return `${these} of this sheet, this one first, ${cells === 1 ? "has" : "have"} no room for the results (#SPILL!): clear what stands right of it or below it`;
    }
  },
});
