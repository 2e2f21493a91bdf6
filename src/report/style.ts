/** Looks of a report on screen and on paper. Fonts are those of the reader's machine; the list begins with those that have Ø, µ and −. */
export const STYLE = `
:root { color-scheme: light; --ink: #111; --quiet: #444; --rule: #999; --faint: #ddd; --paper: #fff; }
@media screen and (prefers-color-scheme: dark) {
  :root { color-scheme: dark; --ink: #eee; --quiet: #bbb; --rule: #888; --faint: #444; --paper: #1a1a1a; }
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 10.5pt/1.4 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", "DejaVu Sans", sans-serif; }
body { max-width: 178mm; margin: 0 auto; padding: 10mm 5mm; overflow-wrap: break-word; }
h1, h2, h3 { line-height: 1.2; margin: 0; break-after: avoid; }
h1 { font-size: 19pt; }
h2 { font-size: 13.5pt; margin-top: 8mm; padding-bottom: 1mm; border-bottom: 0.6mm solid var(--ink); }
h3 { font-size: 11.5pt; margin-top: 6mm; }
p, ul, dl { margin: 1.5mm 0 0; }
ul { padding-left: 5mm; }
.letterhead { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: flex-end; gap: 3mm 8mm; padding-bottom: 2mm; border-bottom: 0.6mm solid var(--ink); }
.letterhead p { margin: 0; }
.shop { display: flex; gap: 4mm; align-items: center; font-size: 9pt; }
.shop img { max-width: 45mm; max-height: 22mm; background: #fff; }
.shop .name { font-size: 13pt; font-weight: 700; }
.quiet { color: var(--quiet); }
.small { font-size: 9pt; }
.result { margin-top: 3mm; padding: 2.5mm 3.5mm; border: 0.4mm solid var(--ink); font-size: 12pt; font-weight: 600; }
.entries { display: grid; grid-template-columns: repeat(auto-fill, minmax(52mm, 1fr)); gap: 1.5mm 5mm; }
.entries div { border-bottom: 0.2mm solid var(--rule); padding-bottom: 0.6mm; break-inside: avoid; }
.entries dt { font-size: 8.5pt; color: var(--quiet); }
.entries dd { margin: 0; font-weight: 600; }
table { width: 100%; margin-top: 2mm; border-collapse: collapse; font-size: 9.5pt; line-height: 1.3; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-size: 9pt; color: var(--quiet); padding-bottom: 1mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; vertical-align: bottom; font-weight: 600; padding: 1mm 2mm 1mm 0; border-bottom: 0.35mm solid var(--ink); }
td { vertical-align: top; padding: 0.7mm 2mm 0.7mm 0; border-bottom: 0.2mm solid var(--faint); }
table.dense { font-size: 7.5pt; line-height: 1.2; }
table.dense th, table.dense td { padding: 0.35mm 1.2mm 0.35mm 0; }
table.dense .what { min-width: 34mm; }
.input table.dense { font-size: 6.5pt; }
.input table.dense .what { min-width: 22mm; }
.input table.dense .word { white-space: normal; }
.input table.dense th, .input table.dense td { padding-right: 0.8mm; }
table.dense tbody th { padding-top: 1.2mm; border-bottom: 0.2mm solid var(--rule); }
.number { text-align: right; white-space: nowrap; }
.what { overflow-wrap: anywhere; min-width: 38mm; }
.word, .limits { white-space: nowrap; }
.word.bad { font-weight: 700; }
.word.bad::before { content: "■ "; }
.word.doubt { font-weight: 600; }
.word.doubt::before { content: "□ "; }
.figures { display: flex; flex-wrap: wrap; gap: 5mm 6mm; margin-top: 3mm; }
.figures p { width: 100%; margin: 0; }
figure { margin: 0; flex: 0 1 auto; width: 100%; break-inside: avoid; }
figure.half { width: calc(50% - 3mm); }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { font-size: 8.5pt; color: var(--quiet); }
.sheet h2 { font-size: 10.5pt; margin-top: 2mm; padding: 0; border: 0; }
.sheet h3 { font-size: 9.5pt; margin-top: 2mm; }
.sheet .entries { grid-template-columns: repeat(auto-fill, minmax(32mm, 1fr)); gap: 0.6mm 3mm; line-height: 1.2; }
.sheet .entries dt { font-size: 7pt; }
.sheet .entries dd { font-size: 8.5pt; }
.sheet .result { padding: 1.2mm 2.5mm; font-size: 10.5pt; margin-top: 2mm; }
.sheet table { margin-top: 1mm; }
.sheet .figures { gap: 1mm 5mm; margin-top: 1mm; }
.sheet figure { width: calc(50% - 2.5mm); }
.sheet figcaption { font-size: 7pt; }
.sheet table.dense { line-height: 1.15; }
.sheet table.dense th, .sheet table.dense td { padding: 0.2mm 1.2mm 0.2mm 0; }
table.measured tbody th { font-weight: 400; border-bottom: 0.2mm solid var(--faint); vertical-align: top; }
table.measured .what { width: 48mm; }
table.measured.narrow { width: auto; }
table.measured.narrow th.number { min-width: 26mm; }
table.measured .number { white-space: normal; }
.sheet table.measured .limits { padding-left: 3mm; white-space: normal; width: 30mm; }
table.measured .word { color: var(--quiet); }
table.measured .word.bad, table.measured .word.doubt { color: inherit; }
.remarks { font-size: 8.5pt; }
.remarks div { display: flex; gap: 4mm; padding: 0.6mm 0; border-bottom: 0.2mm solid var(--faint); break-inside: avoid; }
.remarks dt { flex: 0 0 45mm; color: var(--quiet); }
.remarks dd { margin: 0; }
.cautions { font-size: 7pt; line-height: 1.2; }
.sheet .signed { margin-top: 10mm; }
.hash { font-family: Consolas, "DejaVu Sans Mono", "Liberation Mono", monospace; font-size: 8.5pt; }
.signed { display: grid; grid-template-columns: 1fr 1fr 0.6fr; gap: 6mm; margin-top: 16mm; break-inside: avoid; }
.signed div { border-top: 0.3mm solid var(--ink); padding-top: 1mm; font-size: 8.5pt; color: var(--quiet); }
a { color: inherit; }
@media screen and (max-width: 480px) {
  body { padding: 4mm; }
  figure.half, .sheet figure { width: 100%; }
  .scroll { overflow-x: auto; }
}
@page { margin: 12mm 15mm 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8.5pt "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", "DejaVu Sans", sans-serif; } }
@media print {
  html { font-size: 9.5pt; }
  body { max-width: none; margin: 0; padding: 0; }
  .input + .input, .input.apart { break-before: page; }
  .input.apart > h2 { margin-top: 0; }
  a { text-decoration: none; }
}
`;
