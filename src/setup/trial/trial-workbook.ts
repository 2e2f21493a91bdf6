import type { BuildSheet } from "../model.ts";
import { campaignsPage } from "./campaigns-sheet.ts";
import { CAMPAIGNS, type TrialChoices } from "./choices.ts";
import { gaugeStudyPage } from "./gauge-study-sheet.ts";
import { itemsOf, readingsPage } from "./readings-sheets.ts";
import { trialLimitsPage, trialPage } from "./trial-and-limit-sheets.ts";
import { verdictsPage } from "./verdicts-sheet.ts";

/**
 * An ordinary workbook for a trial: groups and engines, limits with what matters, gauges and a study of one, campaigns with their
 * masters and temperatures, readings wide by cylinder in a drawn order, blind sheets for a second person, and verdicts by our
 * functions. `compare` and `trial` read it as it is.
 */
export function trialWorkbookSpec(choices: TrialChoices): BuildSheet {
  const items = itemsOf(choices);
  const characteristics = [...new Set(items.map(({ characteristic }) => characteristic))];
  const { page: trial, engines, gauges } = trialPage(choices);
  const { page: limitPage, limits } = trialLimitsPage(choices, characteristics);
  const { page: campaigns, sessions, names } = campaignsPage(choices);
  const given = { choices, items, characteristics, engines, gauges, limits, sessions };
  const readings = CAMPAIGNS.map((campaign, i) => readingsPage(given, campaign, false, i));
  const second = CAMPAIGNS.map((campaign, i) => readingsPage(given, campaign, true, 2 + i));
  const verdicts = verdictsPage(given, { before: readings[0]!.table, after: readings[1]!.table, second: second.map(({ table }) => table) });
  const pages = [trial, limitPage, gaugeStudyPage(choices), campaigns, ...readings.map(({ page }) => page), ...second.map(({ page }) => page), verdicts];
  return {
    title: "Trial",
    sheets: pages.map((page) => page.described(choices)),
    names: [{ name: "Gauge_ids", formula: gauges.body("Gauge id") }, ...names],
  };
}
