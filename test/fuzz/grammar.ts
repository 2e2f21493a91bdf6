import { specs } from "../../src/functions/index.ts";
import { cellName } from "../../src/workbook/address.ts";
import { edge, NUMBERS } from "./edge-values.ts";
import type { FuzzRandom } from "./random.ts";

/** Where references of a formula may point. */
export interface FormulaScope {
  sheets: readonly string[];
  names: readonly string[];
  rows: number;
  columns: number;
}

export const NOWHERE: FormulaScope = { sheets: [], names: [], rows: 4, columns: 4 };

const EXAMPLES = specs.flatMap(({ examples }) => examples.map(({ formula }) => formula.slice(1)));
const SHEET_FUNCTIONS =
  "SUM AVERAGE MIN MAX ROUND IF IFERROR AND OR NOT ABS SQRT COUNT COUNTA INDEX MATCH VLOOKUP XLOOKUP SEQUENCE TRANSPOSE SORT FILTER UNIQUE TEXT LEFT MID CONCATENATE SUMPRODUCT STDEV.S MEDIAN ROW COLUMN ROWS COLUMNS ISBLANK ISERROR ISNUMBER TEXTJOIN SUBSTITUTE MMULT HSTACK VSTACK EXPAND TOCOL WRAPROWS CHOOSEROWS LARGE POWER LN EXP MOD SUMIF COUNTIF COUNTBLANK LET LAMBDA N NOSUCH".split(
    " ",
  );
const OPERATORS = ["+", "-", "*", "/", "^", "&", "=", "<>", "<", ">", "<=", ">=", ":", " ", ","];

/** A formula, without its `=`: one of ours as the manual shows it, changed, or any mixture. */
export function formulaOf(random: FuzzRandom, reach: FormulaScope): string {
  if (random.chance(0.5)) return changed(random.pick(EXAMPLES), random, reach);
  return expression(random, reach, 1 + random.below(4));
}

/** An example with some of its literals, arguments or signs replaced. */
function changed(example: string, random: FuzzRandom, reach: FormulaScope): string {
  const pieces = example.match(/"(?:[^"]|"")*"|[\d.]+|[A-Za-z_.]+|./g) ?? [];
  for (let n = random.below(4); n > 0; n--) {
    const i = random.below(pieces.length);
    const literal = /^[\d."]/.test(pieces[i]!);
    if (literal) pieces[i] = expression(random, reach, 0);
    else if (random.chance(0.5)) pieces[i] = random.pick([",", ";", "(", ")", "{", "}", "", pieces[i]! + pieces[i]!, random.pick(OPERATORS)]);
  }
  return pieces.join("");
}

/** A line break in a formula is LF wherever it comes from. */
const quoted = (text: string): string => `"${text.replaceAll('"', '""').replaceAll("\r", "")}"`;

function literal(random: FuzzRandom): string {
  const kind = random.below(8);
  if (kind < 4) return String(random.pick(NUMBERS));
  if (kind < 6) return quoted(edge(random).slice(0, 60));
  return random.pick(["TRUE", "FALSE", "#N/A", "#REF!", "#DIV/0!", "1%", "", "{1,2;3,4}", '{"a",1}', "{1,2;3}", "-5", "+-+2"]);
}

function cell(random: FuzzRandom, { rows, columns }: FormulaScope): string {
  if (random.chance(0.03)) return random.pick(["A0", "XFD1048576", "XFE1", "A1048577", "$A$1", "A:A", "1:1", "A1#", "A:C", "@A1"]);
  return cellName({ row: random.below(rows + 1), column: random.below(columns + 1) });
}

function reference(random: FuzzRandom, reach: FormulaScope): string {
  const { sheets, names } = reach;
  if (names.length > 0 && random.chance(0.1)) return random.pick(names);
  const sheet = sheets.length > 0 && random.chance(0.25) ? `'${random.pick(sheets).replaceAll("'", "''")}'!` : "";
  const range = random.chance(0.5) ? `${cell(random, reach)}:${cell(random, reach)}` : cell(random, reach);
  return sheet + range;
}

export function expression(random: FuzzRandom, reach: FormulaScope, depth: number): string {
  if (depth <= 0) return random.chance(0.5) && reach.sheets.length > 0 ? reference(random, reach) : literal(random);
  const inner = (): string => expression(random, reach, depth - 1);
  switch (random.below(6)) {
    case 0:
      return `${inner()}${random.pick(OPERATORS)}${inner()}`;
    case 1:
      return `(${inner()})`;
    case 2:
      return `${random.pick(["-", "+", "--", "@"])}${inner()}${random.pick(["", "", "%"])}`;
    case 3: {
      const { name, inputs } = random.pick(specs);
      const count = random.below(inputs.length + 2);
      return `HATCH.${name}(${Array.from({ length: count }, inner).join(",")})`;
    }
    default:
      return `${random.pick(SHEET_FUNCTIONS)}(${Array.from({ length: random.below(5) }, inner).join(",")})`;
  }
}
