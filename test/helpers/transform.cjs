/**
 * TypeScript for jest, and the language's own names made quick. Each test file runs in a context of its
 * own, where every look at a global such as `Math` goes through a slow door: sums that call it in a loop
 * take twenty times as long. As constants of the module they are looked up once. `Date` and the timers
 * stay as they are, because tests put others in their place.
 */
const { createHash } = require("node:crypto");
const { readFileSync } = require("node:fs");
const { createTransformer } = require("@swc/jest");

/** What jest keeps of files that were made otherwise is not taken. */
const KEY = createHash("sha256").update(readFileSync(__filename)).digest("hex").slice(0, 8);

const LANGUAGE =
  "Array BigInt Boolean DataView Error Float64Array Int32Array JSON Map Math Number Object Promise RegExp Set String Symbol Uint8Array Uint32Array WeakMap".split(
    " ",
  );

/** A module that declares such a name itself keeps its own. */
const declares = (code, name) => new RegExp(`(?:class|function|const|let|var|import|as|[{,])\\s+${name}\\b(?!\\.)`).test(code);

const quick = (result) => {
  const names = LANGUAGE.filter((name) => !declares(result.code, name));
  // On the first line, so that the numbers of lines stay.
  return { ...result, code: `const { ${names.join(", ")} } = globalThis;${result.code}` };
};

module.exports = {
  createTransformer(options) {
    const swc = createTransformer(options);
    return {
      ...swc,
      getCacheKey: (...given) => swc.getCacheKey(...given) + KEY,
      process: (...given) => quick(swc.process(...given)),
      processAsync: async (...given) => quick(await swc.processAsync(...given)),
    };
  },
};
