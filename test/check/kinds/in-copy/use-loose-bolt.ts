/** What the parts of the program make of a kind that was added to a copy of it. */
import { byWorst, FINDING_KINDS, findingOf } from "../../../../src/check/finding.ts";
import { marksOf, tally, tallyText, wordOf } from "../../../../src/check/finding-words.ts";
import { findingLine } from "../../../../src/cli/check-output.ts";
import { numbersOf } from "../../../../src/pane/check/finding-numbers.ts";
import { findingsPart } from "../../../../src/report/sections.ts";
import { factsFrom } from "../../../../src/report/stored-facts.ts";

const cell = { sheet: "Head", row: 4, column: 1 };
const subject = { cell, label: "Bolt 3", value: null, lower: null, upper: null, margin: null, verdict: null };
const bolt = findingOf("loose bolt" as never, subject, { turns: 2 } as never);
const others = [findingOf("missing limit", subject, { readings: 1, characteristic: null, results: [] }), findingOf("refused", subject, { why: "no" })];
console.log(
  JSON.stringify({
    kinds: FINDING_KINDS,
    order: [...others, bolt].sort(byWorst).map(({ kind }) => kind),
    word: wordOf(bolt),
    mark: marksOf([bolt, ...others])[0],
    tally: tallyText(tally([bolt, bolt])),
    line: JSON.parse(findingLine("a.xlsx", bolt)),
    numbers: numbersOf(bolt),
    printed: String(findingsPart({ result: { findings: [bolt] } } as never)),
    stored: factsFrom({ tallies: [{ kind: "loose bolt", characteristic: "bolt", count: 1 }], sizes: [], more: 0 }),
  }),
);
