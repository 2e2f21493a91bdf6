/** Functions of Excel that a formula may name and that headless calculation refuses by their name, for the contributors' page: each is tried. */
import { evaluateOne } from "../../src/calc/one-formula.ts";
import { EXCEL_FUNCTIONS } from "../reference/formulas/excel-functions.ts";

const REFUSED = /not known here|not calculated here|not worked out here/;
/** One of these is a call that the function takes, and is refused only by its name. */
const tried = (name: string): string[] => (name === "LAMBDA" ? ["x,x"] : ["1", "1,1", "1,1,1"]);

const isRefused = (name: string): boolean =>
  tried(name).some((inputs) => {
    const answer = evaluateOne(`${name}(${inputs})`);
    return "fault" in answer && REFUSED.test(answer.fault);
  });

/** The sentence with its list. */
export function refusedText(): string {
  const all = [...EXCEL_FUNCTIONS.first, ...EXCEL_FUNCTIONS.later];
  const { error } = console;
  console.error = () => {};
  try {
    const refused = all.filter(isRefused).sort();
    return `Of ${all.length} functions of Excel (\`test/reference/formulas/excel-functions.txt\`) headless calculation refuses these ${refused.length} by their name, in a sentence with the cell: ${refused.join(", ")}.\n`;
  } finally {
    console.error = error;
  }
}
