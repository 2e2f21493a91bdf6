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
