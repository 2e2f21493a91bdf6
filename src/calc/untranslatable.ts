/** A formula that the engine cannot calculate as other sheets do. `code` is what its cell shows; the message completes "this formula …". */
export class Untranslatable extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}
