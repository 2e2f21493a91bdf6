import { mkdirSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { THEMES } from "../../src/pane/mount.tsx";
import { violations } from "../helpers/accessibility.ts";
import { atPane, check } from "../helpers/pane-browser.ts";

import.meta.jest.setTimeout(120_000);

const PICTURES = fileURLToPath(new URL("../output/pane/", import.meta.url));

const pane = atPane();
beforeAll(() => mkdirSync(PICTURES, { recursive: true }));

test.each(THEMES)("the Office theme %s holds whatever the system prefers, and axe finds nothing", async (theme) => {
  const isDark = theme === "dark-gray" || theme === "black";
  const page = await pane.open("findings", { colorScheme: isDark ? "light" : "dark" });
  await page.evaluate((name) => window.stage.pane.setTheme(name), theme);
  await check(page);
  await page.screenshot({ path: `${PICTURES}theme-${theme}.png` });
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe(isDark ? "dark" : "light");
  expect(await violations(page)).toEqual([]);
  await page.evaluate(() => window.stage.pane.setTheme(undefined));
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe(isDark ? "light" : "dark");
});

test("without colour the words and the shapes still differ", async () => {
  const page = await pane.open("findings");
  await check(page);
  const seen = await page.locator(".word").evaluateAll((words) => words.map((word) => `${word.textContent} ${word.querySelector("path")?.getAttribute("d")}`));
  expect(new Set(seen).size).toBe(seen.length);
  const shapes = new Set(await page.locator(".word path").evaluateAll((paths) => paths.map((path) => path.getAttribute("d"))));
  expect(shapes.size).toBe(5);
});

describe("the page", () => {
  test("allows scripts and styles from its own files only", () => {
    const html = readFileSync(new URL("../../src/pane/pane.html", import.meta.url), "utf8");
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
    expect(policy).toBe("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'");
    expect(html).not.toMatch(/ style=| on\w+=|<style|<script>/);
  });

  test("was never held back by that policy, and asked for nothing elsewhere", () => {
    expect(pane.complaints).toEqual([]);
  });

  test("never opens a dialogue of the browser, which Office refuses", () => {
    const folder = new URL("../../src/pane/", import.meta.url);
    for (const file of readdirSync(folder).filter((name) => name.includes(".ts")))
      expect(readFileSync(new URL(file, folder), "utf8")).not.toMatch(/\b(?:alert|confirm|prompt)\(/);
  });
});

test("the tabs stand in one row at 320 px", async () => {
  const page = await pane.open("findings");
  const tabs = page.getByRole("tablist", { name: "Crosshatch" }).getByRole("tab");
  expect(new Set(await tabs.evaluateAll((all) => all.map((tab) => tab.getBoundingClientRect().top))).size).toBe(1);
});
