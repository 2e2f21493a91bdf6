import { roughCount } from "../core/number-text.ts";
/** A file that cannot be read as a workbook. `reason` completes "this file …". */
export class UnreadableFile extends Error {
  override readonly name = "UnreadableFile";

  constructor(
    readonly reason: string,
    readonly file = "",
  ) {
    super(file ? `${file} ${reason}` : `The file ${reason}`);
  }

  /** The same refusal, with the name of the file. */
  of(file: string): UnreadableFile {
    return new UnreadableFile(this.reason, file);
  }
}

/** How much of a file is taken in before it is refused. A workbook that a shop keeps comes nowhere near. */
export interface FileLimits {
  /** Bytes of the file itself. */
  file: number;
  /** Parts in the archive. */
  entries: number;
  /** Bytes of one part, and of all parts that are read, when inflated. */
  part: number;
  inflated: number;
  /** Inflated to packed size, looked at in parts larger than `ratioFrom` bytes. */
  ratio: number;
  ratioFrom: number;
  /** Elements inside one another in a part. */
  depth: number;
  /** Sheets of the workbook. */
  sheets: number;
  /** Cells that hold something (also as a result of array formulas), and cells of the rectangles around them, in the whole workbook. */
  cells: number;
  area: number;
}

export const FILE_LIMITS: FileLimits = {
  file: 200e6,
  entries: 10_000,
  part: 300e6,
  inflated: 500e6,
  ratio: 250,
  ratioFrom: 4e6,
  depth: 100,
  sheets: 1000,
  cells: 500_000,
  area: 5_000_000,
};

/** `12.3 MB`. */
export const megabytes = (bytes: number): string => `${roughCount(bytes / 1e6)} MB`;

/** Refuses a file of so many bytes; asked before it is read, so that it does not fill the memory first. */
export function mustFit(bytes: number, { file }: Pick<FileLimits, "file"> = FILE_LIMITS): void {
  if (bytes > file) throw new UnreadableFile(`is too large: ${megabytes(bytes)}, and at most ${megabytes(file)} are read`);
}
