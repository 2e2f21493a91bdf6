import { unitWords } from "../../core/words.ts";
import { html, Markup } from "../../report/markup.ts";
import type { PlaceGroup } from "./places.ts";

const STYLE = `
html { font: 11pt/1.3 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; color: #111; background: #fff; }
body { max-width: 180mm; margin: 0 auto; padding: 8mm 4mm; }
h1 { font-size: 17pt; margin: 0; } h2 { font-size: 12pt; margin: 6mm 0 1mm; break-after: avoid; }
p { margin: 2mm 0; } .line { display: inline-block; min-width: 42mm; border-bottom: 0.3mm solid #111; }
ol { columns: 2; column-gap: 8mm; margin: 0; padding: 0; list-style: none; }
li { display: flex; justify-content: space-between; align-items: end; gap: 3mm; height: 9mm; break-inside: avoid; }
li span:last-child { flex: none; width: 30mm; border-bottom: 0.3mm solid #111; }
@page { margin: 12mm; }`;

/** A form for those who write first: every place in its order, with a line to write on; on letter paper and on A4. */
export const measuringForm = (book: string, groups: readonly PlaceGroup[], unit: string): string =>
  `<!doctype html>\n${html`<html lang="en"><head><meta charset="utf-8"><title>Measuring form, ${book}</title><style>${new Markup(STYLE)}</style></head><body>
<h1>Measuring form</h1>
<p>${book}${unit && `, lengths in ${unitWords(unit)}`}</p>
<p>Engine <span class="line"></span> Day <span class="line"></span> Measured by <span class="line"></span></p>
${groups.map(groupPart)}
</body></html>`}`;

const groupPart = ({ title, places }: PlaceGroup): Markup => html`<h2>${title}</h2>
<p>Gauge <span class="line"></span> Set to <span class="line"></span></p>
<ol>${places.map(({ name }) => html`<li><span>${name}</span><span></span></li>`)}</ol>`;
