/** What the program leaves behind for scripts. The worst of several wins. */
export const ALL_WELL = 0;
export const FINDINGS = 1;
export const UNREADABLE = 2;
/** Nothing was found, and nothing was proven either. */
export const UNDECIDED = 3;

/** The command as typed makes no sense, said in a sentence; or input that is not there to be read. */
export class Refusal extends Error {}
