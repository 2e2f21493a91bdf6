/**
 * Compiles each source once for all the test files of a worker. jest loads every module anew in every file, which stays so; but reading
 * its text again, the spreadsheet engine's three megabytes above all, would take a sixth of the time of the files that need no browser.
 */
const { cachedDataVersionTag } = require("node:v8");
const vm = require("node:vm");

const { compileFunction, SourceTextModule } = vm;
const compiled = new Map();
/** Node forgets what answers an `import()` in code that was compiled before. */
const IMPORTS_LATER = /\bimport\s*\(/;

/** What was compiled before a setting of the engine was changed is not taken after it. */
const keyOf = (code) => `${cachedDataVersionTag()} ${code}`;

vm.compileFunction = (code, params, given) => {
  if (IMPORTS_LATER.test(code)) return compileFunction(code, params, given);
  const key = keyOf(`${params} ${code}`);
  const cachedData = compiled.get(key);
  const made = compileFunction(code, params, { ...given, cachedData, produceCachedData: !cachedData });
  if (!cachedData) compiled.set(key, made.cachedData);
  return made;
};

vm.SourceTextModule = class extends SourceTextModule {
  constructor(code, given) {
    const key = keyOf(code);
    const cachedData = compiled.get(key);
    super(code, { ...given, cachedData });
    if (!cachedData && !IMPORTS_LATER.test(code)) compiled.set(key, this.createCachedData());
  }
};
