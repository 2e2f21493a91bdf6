import { GROUP_TITLES, GROUPS, type Spec } from "../../src/core/define.ts";
import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { agrees, type Check, digitsReached, elementOf, printedDigits } from "./checks/check.ts";
import { CHECKS } from "./checks/index.ts";

/** A longer formula holds a data set, which the source names. */
const LONGEST_SHOWN = 130;

const INTRODUCTION = `# What each function is checked against

Every worksheet function is held against at least one value that somebody outside this project has printed, that follows from what they have printed,
or that a rule of the trade gives. The values stand in \`checks/\`; the tests calculate each of them bare and in the cells of a workbook, and
\`samples/self-check.xlsx\` does so in your own sheet. This page is made from them by \`npm run generate\`.

**How it was seen** — *read*: in the source, or in a copy or an account of it. *From memory*: the source was not at hand. *Computed*: worked out apart
from this project, by hand or with another program, from what the source says. *Common practice*: a rule of the trade that has no single source.

**Digits** — how many leading digits of the printed value the function bears out, of those that the source prints (or of those that the
test asks for, where a data set cannot give more in double precision). Several values in one row: the least. *Exact*: nothing differs, not even in
the last place. *To the letter*: text. What a source has rounded on its way, the function cannot bear out.

`;

/** The page that tells what each function is checked against. */
export function referencePage(specs: readonly Spec[]): string {
  const sections = GROUPS.map((group) => {
    const rows = specs
      .filter((spec) => spec.group === group)
      .flatMap(({ name }) => sourcesOf(CHECKS[group].filter((check) => check.function === name)).map(rowOf));
    return [`## ${GROUP_TITLES[group]}`, "", "| function | check | source | how it was seen | digits |", "|---|---|---|---|---|", ...rows, ""].join("\n");
  });
  return `${INTRODUCTION}${sections.join("\n")}`;
}

/** The checks of one function, those that share a source together. */
function sourcesOf(checks: readonly Check[]): Check[][] {
  const shared = new Map<string, Check[]>();
  for (const check of checks) {
    const key = `${check.seen} ${check.source}`;
    shared.set(key, [...(shared.get(key) ?? []), check]);
  }
  return [...shared.values()];
}

function rowOf(checks: readonly Check[]): string {
  const [first] = checks as [Check];
  const more = checks.length > 1 ? ` and ${checks.length - 1} more` : "";
  return `| ${first.function} | ${shown(first)}${more} | ${first.source.replaceAll("|", "\\|")} | ${first.seen} | ${digitsOf(checks)} |`;
}

function shown({ formula, at, expect }: Check): string {
  const cut = formula.length > LONGEST_SHOWN ? formula.replace(/\(.*/, "(…)") : formula;
  const place = at ? `, row ${at[0]}, column ${at[1]}` : "";
  return `\`${cut}\`${place}: ${typeof expect === "number" ? Number(expect.toPrecision(15)) : `“${expect}”`}`;
}

/** What the results bear out of the expected values; fails where one does not agree. */
function digitsOf(checks: readonly Check[]): string {
  const words = new Set<string>();
  let least: { reached: number; printed: number } | undefined;
  for (const check of checks) {
    const result = elementOf(check, evaluateFormula(check.formula));
    if (!agrees(check, result)) throw new Error(`${check.formula} gives ${JSON.stringify(result)}, but ${check.expect} is expected (${check.source})`);
    if (typeof result !== "number") words.add("to the letter");
    else if (check.within === undefined) words.add("exact");
    else if (check.expect === 0) words.add(`0 ± ${check.within}`);
    else {
      const [reached, printed] = [digitsReached(check, result), printedDigits(check)];
      if (!least || reached < least.reached) least = { reached, printed };
    }
  }
  return [...(least ? [`${least.reached} of ${least.printed}`] : []), ...words].join(", ");
}
