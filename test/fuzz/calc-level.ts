import { evaluateOne } from "../../src/calc/one-formula.ts";
import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { formulaOf, NOWHERE } from "./grammar.ts";
import { agree, expectSame, expectSentence } from "./oracles.ts";
import { Defect, type Level } from "./outcome.ts";

/** A line of `crosshatch calc -`: ends in a value or a sentence, and in the same one however it is spaced. */
export const calcLevel: Level = {
  name: "calc lines",
  weight: 22,
  run(random) {
    const formula = formulaOf(random, NOWHERE);
    const answer = evaluateOne(formula);
    if ("fault" in answer) expectSentence(answer.fault, formula);
    else if (!holdsReferences(formula) && !formula.startsWith("=")) {
      expectSame(`${formula} in brackets`, evaluateOne(`(${formula})`), answer);
      const read = evaluateFormula(formula);
      const isKnown = !(typeof read === "object" && read !== null && "why" in read) && !Array.isArray(read) && !Array.isArray(answer.value);
      if (isKnown && !agree(answer.value as never, read as never)) throw new Defect(`${formula}: ${JSON.stringify(answer.value)} and ${JSON.stringify(read)}`);
    }
    return "fault" in answer ? "refused" : "result";
  },
};

const holdsReferences = (formula: string): boolean => /[A-Z]+\d|:/i.test(formula.replaceAll(/"[^"]*"/g, ""));
