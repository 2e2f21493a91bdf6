import { useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { CheckResult, Finding } from "../../check/finding.ts";
import { type FindingGroup, groupsByCause } from "../../check/finding-groups.ts";
import { tally, wordOf } from "../../check/finding-words.ts";
import { counted, grouped, rowsText } from "../../core/number-text.ts";
import { placeName } from "../../workbook/address.ts";
import { textFrom, useStored } from "../parts/stored-choices.ts";
import { useKey } from "../parts/use-key.ts";
import { HowTo } from "./check-view.tsx";
import type { ListRow } from "./finding-row.tsx";
import { FindingsList } from "./findings-list.tsx";

const ORDERS = ["worst first", "by place", "by margin"] as const;

type FindingOrder = (typeof ORDERS)[number];

export const orderFrom = (given: unknown): FindingOrder | undefined => ORDERS.find((order) => order === given);

/** Findings in another order; a check gives them worst first, and what is alike stays so. */
export function orderedFindings(findings: readonly Finding[], order: FindingOrder, sheets: readonly string[]): readonly Finding[] {
  if (order === "by margin") return findings.toSorted((a, b) => marginOf(a) - marginOf(b));
  if (order === "worst first") return findings;
  const places = new Map(sheets.map((sheet, i) => [sheet, i]));
  const sheet = ({ cell }: Finding) => places.get(cell.sheet) ?? sheets.length;
  return findings.toSorted((a, b) => sheet(a) - sheet(b) || a.cell.row - b.cell.row || a.cell.column - b.cell.column);
}

/** The least first; what has none behind all that have. */
const marginOf = ({ margin }: Finding): number => margin ?? Number.MAX_VALUE;

/** The same thing found again by a later check. */
export const sameFinding = (a: Finding, b: Finding): boolean =>
  a.kind === b.kind && a.cell.row === b.cell.row && a.cell.column === b.cell.column && a.cell.sheet === b.cell.sheet && a.label === b.label;

/** The rows of lines: one that stands for several is followed by these where it is open. A slip stands on its line itself. */
function listRows(lines: readonly FindingGroup[], isOpen: (finding: Finding) => boolean): ListRow[] {
  return lines.flatMap(({ findings, cause }): ListRow[] => {
    const [finding, ...others] = findings;
    if (others.length === 0) return [{ finding }];
    const shows = isOpen(finding);
    const within = cause === null ? others : findings;
    return [{ finding, line: { findings, cause, isOpen: shows } }, ...(shows ? within.map((one) => ({ finding: one, isWithin: true })) : [])];
  });
}

const sameRow = (a: ListRow, b: ListRow): boolean =>
  (a.line === undefined) === (b.line === undefined) && (a.finding === b.finding || sameFinding(a.finding, b.finding));

interface Props {
  result: CheckResult;
  sheets: readonly string[];
  onSelect(finding: Finding): void;
}

export function CheckFindings({ result, sheets, onSelect }: Props) {
  const { findings } = result;
  const [word, setWord] = useStored("check filter", "", textFrom);
  const [order, setOrder] = useStored<FindingOrder>("check order", "worst first", orderFrom);
  const [told, setTold] = useState("");
  const counts = useMemo(() => tally(findings), [findings]);
  // A word that the new result no longer has would hide everything.
  const filter = counts.has(word) ? word : "";
  const lines = useMemo(() => {
    const shown = orderedFindings(filter ? findings.filter((finding) => wordOf(finding) === filter) : findings, order, sheets);
    // Those of one cause stand together only where findings stand by how bad they are.
    return order === "worst first" ? groupsByCause(shown) : shown.map((finding): FindingGroup => ({ findings: [finding], cause: null }));
  }, [findings, filter, order, sheets]);
  const [opened, setOpened] = useState<readonly Finding[]>([]);
  const rows = useMemo(() => listRows(lines, (finding) => opened.some((one) => sameFinding(one, finding))), [lines, opened]);
  const [chosen, setChosen] = useState<ListRow | null>(null);
  // A check that was made again has found anew what it finds; the choice goes on with it.
  const index = useMemo(() => (chosen ? rows.findIndex((row) => sameRow(row, chosen)) : -1), [rows, chosen]);
  const section = useRef<HTMLElement>(null);
  useFocusKept(section);

  const choose = (at: number) => {
    setChosen(rows[at]!);
    onSelect(rows[at]!.finding);
  };
  const open = (at: number) => {
    const { finding, line } = rows[at]!;
    setOpened((before) => (line!.isOpen ? before.filter((one) => !sameFinding(one, finding)) : [...before, finding]));
    choose(at);
  };
  const goOn = () => {
    if (rows.length === 0) return;
    const at = (index + 1) % rows.length;
    const { finding, line } = rows[at]!;
    const more = line ? `, and ${grouped(line.findings.length - 1)} more of one cause` : "";
    setTold(`${at + 1} of ${rows.length}: ${wordOf(finding)}, ${placeName(finding.cell)}, ${finding.label}${more}. ${line?.cause ?? finding.sentence}`);
    choose(at);
  };
  useKey("F8", section, goOn);
  return (
    <section ref={section} aria-label="Result of the check">
      <div class="summary">
        <h2 tabIndex={-1}>{findings.length === 0 ? "No findings" : counted(findings.length, "finding")}</h2>
        {findings.length > 0 && (
          <button type="button" aria-keyshortcuts="F8" onClick={goOn}>
            Next finding <kbd>F8</kbd>
          </button>
        )}
      </div>
      <p class="counts">
        {rowsText(result)}
        {lines.length < findings.length && filter === "" && `. Shown as ${counted(lines.length, "line")}, one for each cause.`}
      </p>
      {findings.length > 1 && (
        <div class="summary">
          <WordFilter counts={counts} filter={filter} onFilter={setWord} />
          <select aria-label="Order" value={order} onChange={(event) => setOrder(event.currentTarget.value as FindingOrder)}>
            {ORDERS.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </div>
      )}
      <p class="heard-only" role="status">
        {told}
      </p>
      {findings.length === 0 && <NoFindings result={result} />}
      {rows.length > 0 && (
        <FindingsList
          key={`${filter} ${order}`}
          rows={rows}
          order={order}
          wanted={chosen}
          chosen={index}
          onChoose={(at) => (rows[at]!.line ? open(at) : choose(at))}
        />
      )}
    </section>
  );
}

interface FilterProps {
  counts: ReadonlyMap<string, number>;
  filter: string;
  onFilter(word: string): void;
}

function WordFilter({ counts, filter, onFilter }: FilterProps) {
  return (
    <select aria-label="Show" value={filter} onChange={(event) => onFilter(event.currentTarget.value)}>
      <option value="">show all</option>
      {[...counts].map(([name, count]) => (
        <option key={name} value={name}>
          {name} ({count})
        </option>
      ))}
    </select>
  );
}

/** Where a new result takes away what had the focus, it goes to what is nearest; nothing else gets it. */
function useFocusKept(section: { readonly current: HTMLElement | null }): void {
  // While a component is rendered, the page still shows what was there before.
  const had = section.current?.contains(document.activeElement) ?? false;
  useLayoutEffect(() => {
    if (!had || document.activeElement !== document.body) return;
    const find = (what: string) => section.current!.querySelector<HTMLElement>(what);
    (find(".findings button[tabindex='0']") ?? find("h2"))!.focus();
  });
}

function NoFindings({ result: { rowsIn, inputs } }: { result: CheckResult }) {
  if (rowsIn > 0) return <p class="advice">Every judged reading is within its limits, none near one.</p>;
  return (
    <div class="advice">
      <p>Nothing in this workbook is judged against a limit yet{inputs > 0 && `; the ${counted(inputs, "cell")} that functions read show no slip`}.</p>
      <HowTo />
    </div>
  );
}
