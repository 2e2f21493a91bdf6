import { counted } from "../../core/number-text.ts";
import { commonExaggeration } from "../../drawings/bore.ts";
import { drawBoreProfile } from "../../drawings/bore-profile.ts";
import { drawChangePlot } from "../../drawings/change-plot.ts";
import { drawCompressionBars } from "../../drawings/compression-bars.ts";
import { drawRoundnessTrace } from "../../drawings/roundness-trace.ts";
import { type Drawn, isDrawing } from "../../drawings/svg.ts";
import type { Placed, ReportInput } from "../content.ts";
import { html, Markup } from "../markup.ts";

/** Drawings of one kind that a report holds; a block of 16 cylinders in four sheets. */
const MOST_DRAWN = 64;
/** Room across the page and half of it, in CSS pixels. */
const WHOLE = 640;
const HALF = 420;

/** Everything that can be drawn of one input. `id` keeps the drawings of several inputs apart. */
export function figuresPart({ content }: ReportInput, id: string): Markup {
  const { bores, traces, tests, changes } = content;
  const factor = commonExaggeration(bores.map(({ what }) => what));
  const figures = [
    ...kind("Bore profile", bores, (bore, i) => {
      const common = factor(bore);
      return drawBoreProfile(bore, { id: `${id}-bore-${i}`, width: WHOLE, ...(common === undefined ? {} : { factor: common }) });
    }),
    ...kind("Roundness trace", traces, (trace, i) => drawRoundnessTrace(trace, { id: `${id}-trace-${i}` })),
    ...kind("Compression test", tests, (test, i) => drawCompressionBars(test, { id: `${id}-test-${i}`, width: HALF })),
    ...kind("Changes", changes, (plot, i) => drawChangePlot(plot, { id: `${id}-change-${i}`, width: WHOLE })),
  ];
  if (figures.length === 0) return html``;
  return html`<h3>Drawings</h3><div class="figures">${figures}</div>`;
}

function kind<T>(title: string, all: readonly Placed<T>[], draw: (what: T, index: number) => Drawn): Markup[] {
  const figures = all.slice(0, MOST_DRAWN).map(({ what, place }, i) => figure(draw(what, i + 1), `${title}, ${place}`));
  const rest = all.length - MOST_DRAWN;
  return rest > 0 ? [...figures, html`<p class="quiet">${title}: ${counted(rest, "more is", "more are")} not drawn here.</p>`] : figures;
}

function figure(drawn: Drawn, caption: string): Markup {
  if (!isDrawing(drawn)) return html`<p class="quiet">${caption}: ${drawn.sentence}.</p>`;
  return html`<figure class="${drawn.width <= HALF ? "half" : "whole"}">${new Markup(drawn.svg)}<figcaption>${caption}</figcaption></figure>
`;
}
