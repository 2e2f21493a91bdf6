/** What to say of a file with an ending that is not read. */
export const unknownKind = (kind: string): string =>
  `is neither .xlsx nor .csv${kind === ".xls" || kind === ".xlsb" || kind === ".ods" ? ": save it as .xlsx" : ""}`;

/** Why the system would not hand the file over. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case "ENOENT":
      return "is not there";
    case "EACCES":
    case "EPERM":
      return "may not be read: its permissions forbid it";
    case "ERR_FS_FILE_TOO_LARGE":
      return "is too large to be read";
    case "ENOSPC":
      return "cannot be checked to its end: there is no room left for the temporary file of its findings";
    default:
      if (code) return `cannot be read (${code})`;
      throw new Error(message, { cause: error });
  }
}
