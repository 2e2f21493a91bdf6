import { blankHelp, GROUP_TITLES, GROUPS, NAMESPACE, SEPARATORS, type Spec, signature } from "../core/define.ts";
import type { BroadcastKind, Param } from "../core/param.ts";
import { specByName, specs } from "../functions/index.ts";
import { Refusal } from "./exit-codes.ts";
import { aligned } from "./output.ts";

/** What every page of help ends with. */
const CAUTION = "Figures come from the readings and limits that you type; the maker's service manual and a qualified technician decide.";

/** All functions by trade group, a line each. */
export function functionList(): string {
  const pages = GROUPS.flatMap((group) => {
    const own = specs.filter((spec) => spec.group === group);
    return own.length === 0 ? [] : [GROUP_TITLES[group], ...aligned(own.map(({ name, summary }) => [`  ${name}`, summary])), ""];
  });
  return [...pages, `In a cell: =${NAMESPACE}.NAME(…). crosshatch help NAME tells all about one.`].join("\n");
}

/** The whole manual of one function. */
export function functionHelp(name: string): string {
  const wanted = name.toUpperCase().replace(/^=?HATCH\./, "");
  const spec = specByName.get(wanted);
  if (!spec) throw new Refusal(`there is no function or command called ${name}${alternatives(wanted)}`);
  const blank = blankHelp(spec);
  return [
    `${NAMESPACE}.${signature(spec)}`,
    spec.summary,
    "",
    `  ${spec.definition}`,
    "",
    ...inputs(spec),
    `Gives ${spec.returns.help}${spec.returns.columns ? `: ${spec.returns.columns.join(", ")}` : ""}`,
    "",
    "Examples",
    ...spec.examples.flatMap(({ formula, gives }) => [`  ${formula}`, ...resultLines(gives)]),
    "",
    SEPARATORS,
    "",
    ...(blank ? ["Blank cells", `  ${blank}`, ""] : []),
    ...(spec.notes?.length ? ["Before you trust the number", ...spec.notes.map((note) => `  ${note}`), ""] : []),
    `Source: ${spec.source}`,
    CAUTION,
  ].join("\n");
}

function inputs({ inputs }: Spec): string[] {
  if (inputs.length === 0) return [];
  const rows = inputs.flatMap(({ name, param }) => [
    [`  ${name}`, param.help],
    ["", `${param.want}: ${TAKES[param.broadcastKind]}; ${leftOut(param)}`],
  ]);
  return ["Inputs", ...aligned(rows), ""];
}

const TAKES: Readonly<Record<BroadcastKind, string>> = {
  element: "a cell, or a range for a batch",
  bore: "the range of one bore, or a cell",
  list: "a range as one list",
  grid: "a range as one table",
  cells: "a range as one table",
  axes: "one cell",
};

function leftOut({ isOptional, fallback }: Param<unknown>): string {
  if (!isOptional) return "needed";
  if (fallback === undefined) return "can be left out";
  return `${typeof fallback === "boolean" ? String(fallback).toUpperCase() : fallback} if left out`;
}

function resultLines(gives: Spec["examples"][number]["gives"]): string[] {
  if (typeof gives === "object") return aligned(gives.map((row) => row.map(String))).map((row) => `    ${row}`);
  return [`    ${gives === "" ? "(blank)" : gives}`];
}

/** Names that the one typed may stand for: those that hold it, or that one or two letters more, less or other make of it. */
function alternatives(wanted: string): string {
  const near = specs.map(({ name }) => name).filter((name) => (wanted.length > 2 && name.includes(wanted)) || distance(name, wanted) <= 2);
  return near.length === 0 ? "; crosshatch help lists them" : `; did you mean ${near.join(" or ")}?`;
}

/** Letters to put in, take out or exchange to make one word of the other. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) next[j] = Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}
