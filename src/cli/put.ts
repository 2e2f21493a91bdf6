import { OutFile, refusedTarget } from "./out-file.ts";

/** Writes a whole file, or leaves what is there as it is and says why. */
export async function put(out: string, content: Uint8Array | string, force: boolean): Promise<void> {
  const file = new OutFile(out, force);
  file.write(content);
  file.close();
}

/** Says before any work is done why a file could not be written in the end. */
export async function refuseTarget(out: string, force: boolean): Promise<void> {
  refusedTarget(out, force);
}
