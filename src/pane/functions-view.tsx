import { useMemo } from "preact/hooks";
import { GROUP_TITLES, GROUPS, type Spec, type TradeGroup } from "../core/define.ts";
import { specs } from "../functions/index.ts";
import { FunctionHelp } from "./function-help.tsx";
import { textFrom, useStored } from "./parts/stored-choices.ts";

/** Specs that hold every word of the search in their name, summary, definition or params, by group. */
export function findSpecs(specs: readonly Spec[], search: string): Map<TradeGroup, Spec[]> {
  const words = search
    .toLowerCase()
    .replaceAll("hatch.", " ")
    .split(/[\s=(),]+/)
    .filter(Boolean);
  const found = new Map<TradeGroup, Spec[]>();
  for (const group of GROUPS) {
    const members = specs.filter((spec) => spec.group === group && words.every((word) => searchedText(spec).includes(word)));
    if (members.length > 0) found.set(group, members);
  }
  return found;
}

const texts = new WeakMap<Spec, string>();

function searchedText(spec: Spec): string {
  let text = texts.get(spec);
  if (text === undefined) {
    const params = spec.inputs.flatMap(({ name, param }) => [name, param.help]);
    text = [spec.name, spec.summary, spec.definition, ...params].join("\n").toLowerCase();
    texts.set(spec, text);
  }
  return text;
}

/** Every worksheet function by trade group, with a search; the specs are the manual. */
export function FunctionsView() {
  const [search, setSearch] = useStored("functions", "", textFrom);
  const groups = useMemo(() => [...findSpecs(specs, search)], [specs, search]);
  const found = groups.reduce((sum, [, members]) => sum + members.length, 0);
  return (
    <>
      <h2 class="heard-only">Functions</h2>
      <search>
        <label class="search">
          <span>Search functions</span>
          <input type="search" value={search} placeholder="taper, clearance, gap …" onInput={(event) => setSearch(event.currentTarget.value)} />
        </label>
      </search>
      <p class="notice" role="status">
        {search ? `${found} of ${specs.length} functions` : `${specs.length} functions`}
      </p>
      {found === 0 && <p class="advice">No function has all of these words. Try one word, such as the name of the part.</p>}
      {groups.map(([group, members]) => (
        <section key={group} aria-labelledby={`group-${group}`}>
          <h3 id={`group-${group}`}>{GROUP_TITLES[group]}</h3>
          {members.map((spec) => (
            <FunctionHelp key={spec.name} spec={spec} />
          ))}
        </section>
      ))}
      <p class="advice">Examples have a decimal point, commas between inputs and semicolons between rows; a sheet set to another language has its own signs.</p>
    </>
  );
}
