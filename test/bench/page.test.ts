import { MARK_FILL } from "../../src/workbook/port.ts";
import { atStand } from "./stand.ts";

const at = atStand("one page");

const button = (name: string) => at.page.pane.getByRole("button", { name, exact: true });

describe("the sample as it is", () => {
  test("the sample is there, calculated by our functions, and nothing went wrong or elsewhere", async () => {
    expect(await at.page.page.title()).toBe("build-sheet.xlsx – Crosshatch bench");
    const formulas = (await at.page.sheets()).flatMap(({ formulas: rows, values }) =>
      rows.flatMap((row, r) => row.map((formula, c) => ({ formula, value: values[r]![c] }))).filter(({ formula }) => formula?.includes("HATCH.")),
    );
    expect(formulas.length).toBeGreaterThan(20);
    expect(formulas.filter(({ value }) => typeof value === "object" && value !== null)).toEqual([]);
    await at.page.picture("light");
    expect(at.page.trouble).toEqual([]);
  }, 60_000);

  test("menus that need what the bench has not are not offered", async () => {
    await at.page.page.locator(".o-topbar-menu", { hasText: "Insert" }).click();
    const entries = await at.page.page.locator(".o-menu-item").allInnerTexts();
    expect(entries.join()).toContain("Function");
    expect(entries.join()).not.toMatch(/Chart|Image|Pivot|Carousel/);
    await at.page.page.keyboard.press("Escape");
    for (const [menu, there, away] of [
      ["View", "Freeze", /panel|irregularit/i],
      ["File", "Print", /settings/i],
    ] as const) {
      await at.page.page.locator(".o-topbar-menu", { hasText: menu }).click();
      const names = (await at.page.page.locator(".o-menu-item").allInnerTexts()).join();
      expect(names).toContain(there);
      expect(names).not.toMatch(away);
      await at.page.page.keyboard.press("Escape");
    }
  }, 60_000);

  test("a finding that is clicked in the pane selects its cell in the sheet", async () => {
    await button("Check").click();
    await at.page.pane.getByRole("button", { name: /Rings!C7/ }).click();
    await expect(at.page.pane.locator(".counts").textContent()).resolves.toMatch(/^\d+ of \d+ rows checked$/);
    expect(await at.page.selected()).toBe("Rings!C7");
    await at.page.picture("finding");
  }, 60_000);

  test("the pane can be put away and comes back as it was", async () => {
    await button("Check").click();
    await at.page.pane.locator(".finding").first().waitFor();
    await at.page.page.getByRole("button", { name: "Hide pane" }).click();
    expect(await at.page.page.locator("#pane").isVisible()).toBe(false);
    const toggle = at.page.page.getByRole("button", { name: "Show pane" });
    expect(await toggle.getAttribute("aria-expanded")).toBe("false");
    await toggle.click();
    expect(await at.page.pane.locator(".finding").count()).toBeGreaterThan(0);
  }, 60_000);
});

describe("the sample as it is changed", () => {
  beforeEach(at.anew, 60_000);

  test("typing a reading changes its verdict at once, and undo takes it back; a decimal comma is not taken for a thousands sign", async () => {
    expect([await at.page.value("Bores!C16"), await at.page.value("Bores!D16")]).toEqual([0.01, "within"]);
    await at.page.type("C4", "73.09");
    expect([await at.page.value("Bores!C16"), await at.page.value("Bores!D16")]).toEqual([0.075, "over"]);
    await at.page.page.keyboard.press("Control+z");
    expect([await at.page.value("Bores!C4"), await at.page.value("Bores!D16")]).toEqual([73.025, "within"]);
    await at.page.type("C4", "73,02");
    expect(await at.page.value("Bores!C4")).toBe("73,02");
    expect(await at.page.value("Bores!C16")).toMatchObject({ message: expect.stringContaining("a decimal comma is not read") });
  }, 60_000);

  test("readings that come as fast as a gauge sends them all land whole in their cells", async () => {
    const session = await at.page.page.context().newCDPSession(at.page.page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: 6 });
    const readings = ["73.001", "73.012", "73.023", "73.034", "73.045", "73.056"];
    await at.page.click("C4");
    await Promise.all(readings.flatMap((reading) => [...reading, "Enter"].map((key) => at.page.page.keyboard.press(key))));
    await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
    const column = (await at.page.sheets())[0]!.values.slice(3, 9).map((row) => row[2]);
    expect(column).toEqual(readings.map(Number));
  }, 60_000);

  test("cells are marked as one step, and their look comes back by undo or by taking the marks off", async () => {
    const before = [await at.page.fill("C17"), await at.page.fill("I17")];
    await button("Check").click();
    await button("Mark cells").click();
    await at.page.pane.getByText("cells marked.").first().waitFor();
    expect([await at.page.fill("C17"), await at.page.fill("I17")]).toEqual([MARK_FILL.outside, MARK_FILL.outside]);
    await at.page.picture("marked");
    await at.page.click("A1");
    await at.page.page.keyboard.press("Control+z");
    expect([await at.page.fill("C17"), await at.page.fill("I17")]).toEqual(before);
    await at.page.page.keyboard.press("Control+y");
    expect(await at.page.fill("C17")).toBe(MARK_FILL.outside);
    await button("Take marks off").click();
    await at.page.pane
      .getByText(/Marks taken off \d+ cells\./)
      .first()
      .waitFor();
    expect([await at.page.fill("C17"), await at.page.fill("I17")]).toEqual(before);
  }, 60_000);

  test("the pane's findings follow what is typed", async () => {
    await button("Check").click();
    await at.page.pane.locator(".finding").first().waitFor();
    const taper = at.page.pane.getByRole("button", { name: /Bores!C16/ });
    expect(await taper.count()).toBe(0);
    await at.page.type("C4", "73.09");
    await taper.waitFor();
    expect(await taper.textContent()).toContain("0.075 is over the upper limit 0.02");
  }, 60_000);
});
