import type { Page } from "playwright-core";

/** Steps that people take in the Plan view. */
export async function openPlan(page: Page, title: string): Promise<void> {
  await page.getByRole("tab", { name: "Plan" }).click();
  await page.getByRole("combobox", { name: "Plan", exact: true }).selectOption(title);
}

export async function fill(page: Page, answers: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(answers)) await page.getByLabel(label, { exact: true }).fill(text);
}

export const fillRebore = (page: Page): Promise<void> =>
  fill(page, { "Bore readings": "Bores!B2:G4", "Standard bore": "Bores!B5", "Oversizes available": "0.25 0.5" });

export const fillRings = (page: Page): Promise<void> => fill(page, { "End gaps as measured": "Rings!B2:C4", Bores: "Bores!B2:G4" });

/** Works the plan out and waits for what comes of it. */
export async function workOut(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.locator("table.plan, .trouble").first().waitFor();
}
