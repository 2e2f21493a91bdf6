import { HostRefusal } from "./sheet-host.ts";

/** The refusals that every adapter can meet, worded once. */
export const noSheet = (name: string): HostRefusal => new HostRefusal(`There is no sheet "${name}" in this workbook.`);

export const protectedSheet = (name: string): HostRefusal =>
  new HostRefusal(`The sheet "${name}" is protected: take the protection off, or work on a copy, and try again.`);

export const hiddenSheet = (name: string): HostRefusal => new HostRefusal(`The sheet "${name}" is hidden: show it, and try again.`);
