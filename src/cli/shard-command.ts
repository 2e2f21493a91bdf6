import { createHash } from "node:crypto";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { filesOf } from "./inputs.ts";
import { printable } from "./output.ts";
import { streams } from "./streams.ts";

const SHARE = /^(\d{1,6})\/(\d{1,6})$/;

/** `crosshatch shard K/N FILES…`: the files of one share, one a line. The shares of all K make up all files, each once, on every machine alike. */
export async function shard(share: string, patterns: readonly string[], { null: isNull = false }: { null?: boolean }): Promise<number> {
  const [, k, n] = SHARE.exec(share) ?? [];
  const [wanted, shares] = [Number(k), Number(n)];
  if (!(wanted >= 1 && wanted <= shares)) throw new Refusal(`${share} is no share: it must be one such as 1/4, from 1/4 to 4/4`);
  const { stdout } = streams();
  for (const file of await filesOf(patterns)) {
    if (shareOf(file, shares) !== wanted) continue;
    if (!isNull && /[\r\n]/.test(file))
      throw new Refusal(`the name ${JSON.stringify(file)} does not fit on one line: ask for names that end with a null, by --null`);
    stdout.write(shardLine(file, { isNull, isTerminal: stdout.isTTY === true }));
  }
  return ALL_WELL;
}

/** A name is passed on as it is; only a person at a terminal gets it without what would steer that. */
export const shardLine = (file: string, { isNull, isTerminal }: { isNull: boolean; isTerminal: boolean }): string =>
  `${isTerminal ? printable(file) : file}${isNull ? "\0" : "\n"}`;

/** By the path as it is named, with `/` between its folders; where the file stands, what is in it and which others there are do not matter. */
export function shareOf(file: string, shares: number): number {
  const path = file.replaceAll("\\", "/").replace(/^(?:\.\/)+/, "");
  return (createHash("sha256").update(path).digest().readUIntBE(0, 6) % shares) + 1;
}
