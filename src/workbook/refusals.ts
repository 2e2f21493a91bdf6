import { HostRefusal } from "./port.ts";

/** The refusals that every adapter can meet, worded once. */
export const noSheet = (name: string): HostRefusal => new HostRefusal(`There is no sheet "${name}" in this workbook.`);

const sheetTaken = (name: string): HostRefusal =>
  new HostRefusal(`There is a sheet "${name}" in this workbook already: rename it, or work in a new workbook. Nothing was added.`);

export const nameTaken = (name: string): HostRefusal =>
  new HostRefusal(
    `The name "${name}" stands for something in this workbook already: take it out of the list of names, or work in a new workbook. Nothing was added.`,
  );

/** The first of the names that is there already; Excel and the bench take capitals and small letters for the same. */
export function refuseTaken(names: readonly string[], there: readonly string[], refusal = sheetTaken): void {
  const taken = new Set(there.map((name) => name.toLowerCase()));
  const name = names.find((one) => taken.has(one.toLowerCase()));
  if (name !== undefined) throw refusal(name);
}

export const protectedSheet = (name: string): HostRefusal =>
  new HostRefusal(`The sheet "${name}" is protected: take the protection off, or work on a copy, and try again.`);

export const hiddenSheet = (name: string): HostRefusal => new HostRefusal(`The sheet "${name}" is hidden: show it, and try again.`);
