/** Parts of the pane that are loaded on first use, so that the pane itself is there at once. */
export const loadChecker = async () => (await part(import("./sliced-check.ts"))).checkInSlices;

/** Reads the layouts that workbooks keep. Its schemas are told first that the pane's policy lets nothing be compiled. */
export async function loadLayouts() {
  await part(import("./no-eval.ts"));
  return part(import("../buildsheet/layout/mapping.ts"));
}
export const loadInsert = () => part(import("./setup/insert.ts"));

/** A part did not come. Browsers remember that, so only a page loaded anew asks again. */
export class PartMissing extends Error {
  constructor() {
    super("This part of the pane could not be loaded. See that the address it comes from can be reached, then reload the pane.");
  }
}

export async function part<T>(loading: Promise<T>): Promise<T> {
  try {
    return await loading;
  } catch {
    throw new PartMissing();
  }
}
