// What the command line uses of it, where tests call that in their own process.
module.exports = globalThis.loadedOnce(require.resolve("./kept-threads.cjs"));
