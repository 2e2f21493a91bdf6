import type { Browser, Page } from "playwright-core";
import { launchBrowser } from "../../src/tools/browser.ts";
import { type StaticServer, serve } from "../helpers/static-server.ts";
import { type Built, builtAddin } from "./built.ts";

declare global {
  interface Window {
    refused?: Promise<string>;
  }
}

/** The pane as Excel shows it, its content policy asked in the browser for what a page should never do. */
let built: Built;
let server: StaticServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  built = await builtAddin("local");
  server = await serve(built.folder);
  browser = await launchBrowser();
  page = await browser.newPage({ viewport: { width: 320, height: 640 } });
  await page.goto(`${server.address}/pane.html`);
  await page.getByText("This page is Crosshatch's pane for Excel").waitFor();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const ELSEWHERE = "https://elsewhere.example/";

const refused = async (): Promise<string> => {
  const answer = await page.evaluate(() => window.refused!);
  return (await page.evaluate(() => "ran" in window)) ? "nothing: it ran" : answer;
};

/** From here on the page keeps what its policy refuses next. */
const listen = (): Promise<void> =>
  page.evaluate(() => {
    window.refused = new Promise((resolve) => {
      document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => resolve(effectiveDirective), { once: true });
      setTimeout(() => resolve("nothing was refused"), 3000);
    });
  });

test.each([
  ["a script in the page", "script-src-elem", "script", { textContent: "window.ran = true" }],
  ["a script elsewhere", "script-src-elem", "script", { src: `${ELSEWHERE}x.js` }],
  ["a picture elsewhere", "img-src", "img", { src: `${ELSEWHERE}x.png` }],
  ["a page in the page", "frame-src", "iframe", { src: ELSEWHERE }],
  ["another address for its files", "base-uri", "base", { href: ELSEWHERE }],
])("%s is refused by %s", async (_, directive, kind, given) => {
  await listen();
  await page.evaluate(([name, properties]) => document.body.append(Object.assign(document.createElement(name), properties)), [kind, given] as const);
  expect(await refused()).toBe(directive);
});

test("readings are sent nowhere, by whatever way, and text does not become code", async () => {
  // What the tests' own connection runs may do more than the page; what runs later is the page's own.
  const later = (attempt: "fetch" | "socket" | "beacon" | "eval") =>
    page.evaluate(
      ([how, address]) => {
        const attempts = {
          fetch: () => void fetch(address, { method: "POST", body: "73.02" }).catch(() => {}),
          socket: () => void new WebSocket(address.replace("https", "wss")),
          beacon: () => void navigator.sendBeacon(address, "73.02"),
          eval: () => void new Function("window.ran = true")(),
        };
        setTimeout(attempts[how]);
      },
      [attempt, ELSEWHERE] as const,
    );
  for (const [attempt, directive] of [
    ["fetch", "connect-src"],
    ["socket", "connect-src"],
    ["beacon", "connect-src"],
    ["eval", "script-src"],
  ] as const) {
    await listen();
    await later(attempt);
    expect([attempt, await refused()]).toEqual([attempt, directive]);
  }
});
