import { HostRefusal } from "./sheet-host.ts";

/** The refusals that every adapter can meet, worded once. */
export const noSheet = (name: string): HostRefusal => new HostRefusal(`There is no sheet "${name}" in this workbook.`);

export const sheetTaken = (name: string): HostRefusal =>
  new HostRefusal(`There is a sheet "${name}" in this workbook already: rename it, or work in a new workbook. Nothing was added.`);

/** The first of the names that a sheet has already; Excel and the bench take capitals and small letters for the same. */
export function refuseTaken(names: readonly string[], there: readonly string[]): void {
  const taken = new Set(there.map((name) => name.toLowerCase()));
  const name = names.find((one) => taken.has(one.toLowerCase()));
  if (name !== undefined) throw sheetTaken(name);
}

export const protectedSheet = (name: string): HostRefusal =>
  new HostRefusal(`The sheet "${name}" is protected: take the protection off, or work on a copy, and try again.`);

export const hiddenSheet = (name: string): HostRefusal => new HostRefusal(`The sheet "${name}" is hidden: show it, and try again.`);
