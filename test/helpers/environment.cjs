/**
 * Node as jest gives it to each test file, with one thing more: packages that a worker loads once for all of its files. The driver of
 * browsers takes seconds to load, and nothing in it changes from file to file; whatever a test may look at with other eyes, as
 * everything of ours, is loaded anew for each.
 */
require("./compiled-once.cjs");
const { TestEnvironment } = require("jest-environment-node");

/**
 * A package may put functions of its own over those of the process, which keep the folder that it was loaded in: files that change it
 * have copies of the process and never tell them.
 */
function loadedOnce(name) {
  const { cwd, chdir } = process;
  const loaded = require(name);
  Object.assign(process, { cwd, chdir });
  return loaded;
}

module.exports = class extends TestEnvironment {
  constructor(...given) {
    super(...given);
    this.global.loadedOnce = loadedOnce;
  }
};
