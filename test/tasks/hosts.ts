/** What each host does of what is asked, as a table for the contributors' page: from what its adapter says of itself. */
import { BENCH_ABILITIES, BENCH_NOTES } from "../../src/hosts/bench/host.ts";
import { EXCEL_ABILITIES, EXCEL_NOTES } from "../../src/hosts/excel/host.ts";
import { FILE_ABILITIES, FILE_NOTES } from "../../src/hosts/file.ts";
import { MEMORY_ABILITIES, MEMORY_NOTES } from "../../src/hosts/memory.ts";
import { ABILITIES, type Abilities, type Ability, type AbilityNotes } from "../../src/workbook/port.ts";

const HOSTS: readonly [name: string, abilities: Abilities, notes: AbilityNotes][] = [
  ["Excel", EXCEL_ABILITIES, EXCEL_NOTES],
  ["bench", BENCH_ABILITIES, BENCH_NOTES],
  ["file", FILE_ABILITIES, FILE_NOTES],
  ["memory", MEMORY_ABILITIES, MEMORY_NOTES],
];

const row = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;

const cell = (says: Abilities[Ability], note: string | undefined): string => (note ? `${says}; ${note}` : says);

export function hostsTable(): string {
  return [
    row(["", ...HOSTS.map(([name]) => name)]),
    row(["---", ...HOSTS.map(() => "---")]),
    ...Object.entries(ABILITIES).map(([ability, meaning]) =>
      row([meaning, ...HOSTS.map(([, abilities, notes]) => cell(abilities[ability as Ability], notes[ability as Ability]))]),
    ),
    row(["all or nothing of what is asked", ...HOSTS.map(([, , notes]) => notes["all or nothing"])]),
    "",
  ].join("\n");
}
