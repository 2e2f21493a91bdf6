import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

/** Milliseconds that a frame may take to answer: on a busy machine much longer than axe would wait. */
const PATIENCE = 30_000;

/**
 * What keeps somebody out of a page and its frames, as axe finds it: by all its rules, or by one. Of what holds only the rule comes
 * back: all that was looked at would be many times the work. This mode looks into frames of the page's own origin, and ours are.
 */
export async function violations(page: Page, rule?: string): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ["violations"], pingWaitTime: PATIENCE });
  const found = await (rule ? axe.withRules([rule]) : axe).analyze();
  const unseen = found.incomplete.filter(({ id }) => id === "frame-tested");
  return [...found.violations, ...unseen].map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html, target }) => `${target.join(" ")} ${html.slice(0, 120)}`).join(", ")}`,
  );
}
