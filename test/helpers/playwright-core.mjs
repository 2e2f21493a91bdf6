// What the sources use of it.
export const { chromium } = globalThis.loadedOnce("playwright-core");
