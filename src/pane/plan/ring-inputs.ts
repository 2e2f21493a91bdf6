import { type Area, cellsOf } from "../../buildsheet/formula/book.ts";
import { type Given, isArea } from "../../plan/inputs.ts";
import type { RingInput, RingInputs } from "../../plan/rings.ts";
import { cellName } from "../../workbook/address.ts";
import type { Answers } from "./answers.ts";

/** Which ring goes with which bore, target and name, as a sheet's own arithmetic pairs a range with a larger one. */
export function ringInputs(answers: Answers): RingInputs {
  const measured = answers.area("measured");
  if (!measured) return { rings: [] };
  const isByBore = answers.form.by !== "target";
  const key = isByBore ? "bore" : "target";
  const wanted = answers.given(key);
  if (Array.isArray(wanted)) answers.refuse(key, "one number is wanted here, or cells");
  const pick = isArea(wanted) ? pairing(answers, key, wanted, measured, isByBore) : () => wanted;
  const namesAt = answers.area("names");
  const nameFor = namesAt && pairing(answers, "names", namesAt, measured, false);
  const rings = [...cellsOf(measured)].map((cell): RingInput => {
    const ring = { ...cell, rows: 1, columns: 1 };
    const name = nameFor?.(ring);
    const text = isArea(name ?? null) ? String(answers.book.value(name as Area) ?? "").trim() : "";
    // Rings of one cylinder that share its name are told apart by their cells.
    const isShared = namesAt !== undefined && namesAt.rows * namesAt.columns < measured.rows * measured.columns;
    const own = text === "" ? cellName(ring) : isShared ? `${text}, ${cellName(ring)}` : text;
    return { name: own, measured: ring, [key]: pick(ring) };
  });
  return { rings, perBore: answers.given("perBore") };
}

type Pick = (ring: Area) => Given;

function pairing(answers: Answers, key: string, from: Area, measured: Area, mayBeReadings: boolean): Pick {
  const fits = (a: number, b: number) => a === 1 || a === b;
  const at = (ring: Area) => ({
    row: from.row + (from.rows === 1 ? 0 : ring.row - measured.row),
    column: from.column + (from.columns === 1 ? 0 : ring.column - measured.column),
  });
  // Two or more readings of each bore stand in its row.
  if (mayBeReadings && from.columns > 1 && from.columns !== measured.columns && fits(from.rows, measured.rows))
    return (ring) => ({ ...from, row: at(ring).row, rows: 1 });
  if (!fits(from.rows, measured.rows) || !fits(from.columns, measured.columns))
    answers.refuse(key, `this is ${sizeOf(from)} and the gaps are ${sizeOf(measured)}: give one for all, one for each row, or one for each gap`);
  return (ring) => ({ sheet: from.sheet, ...at(ring), rows: 1, columns: 1 });
}

const sizeOf = ({ rows, columns }: Area): string => `${rows} down and ${columns} across`;
