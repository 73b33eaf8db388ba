/** How a printed page looks: dark ink on white, one serif for reading and one plain face for numbers and names; nothing is said by colour. */
export const style = `
:root { color-scheme: light; --ink: #23221f; --faint: #55534d; --line: #b9b5a9; --leaf: #f6f4ee; }
* { box-sizing: border-box; }
html { background: #fff; color: var(--ink); font: 11pt/1.45 "Charter", "Bitstream Charter", "Source Serif 4", "Cambria", "Georgia", serif; }
body { max-width: 46rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; }
h1, h2, h3, h4 { line-height: 1.2; font-weight: 600; break-after: avoid; }
h1 { font-size: 2rem; margin: 0 0 .5rem; }
h2 { font-size: 1.4rem; margin: 3rem 0 1rem; padding-bottom: .3rem; border-bottom: 3px double var(--ink); }
h3 { font-size: 1.1rem; margin: 0; }
h4 { font-size: 1rem; margin: 1rem 0 .3rem; }
p { margin: .3rem 0; }
/* Links are told by their line on a screen; on paper they are text. */
a { color: inherit; text-decoration-thickness: 1px; text-underline-offset: 2px; text-decoration-color: var(--faint); }
a:focus-visible { outline: 2px solid var(--ink); outline-offset: 2px; }
code, .n, svg text { font-family: "Noto Sans", "DejaVu Sans", "Liberation Sans", "Arial", sans-serif; font-size: .86em; overflow-wrap: anywhere; }
.away { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.front dl { display: grid; grid-template-columns: 9rem 1fr; gap: .2rem 1rem; margin: 1rem 0; }
.front dt, .rule dt { color: var(--faint); font-style: italic; }
.front dd { margin: 0; }
.front code { font-size: .78em; }
.front ul.cautions { padding: .6rem 1rem .6rem 2rem; border: 1px solid var(--ink); }
.sample { width: 5.25rem; height: 1.4rem; vertical-align: middle; }
nav ol { list-style: none; padding: 0; margin: 0; }
nav .topics > li { margin-bottom: .8rem; }
nav .topics > li > a { font-weight: 600; break-after: avoid; }
nav .topics ol { padding-left: 1rem; }
nav .topics ol li { font-size: .92em; line-height: 1.35; }
@media (min-width: 40rem) { nav .topics { columns: 2; column-gap: 2rem; } }
.rule { margin: 0 0 2rem; padding-top: .8rem; border-top: 1px solid var(--ink); }
h2 + .rule { border-top: 0; padding-top: 0; }
.rule header { break-inside: avoid; break-after: avoid; }
.rule header p { color: var(--faint); font-size: .9em; }
.rule dl { display: grid; grid-template-columns: 6.5rem 1fr; gap: .15rem .8rem; margin: .5rem 0; }
.rule dd { margin: 0 0 0 2.2rem; position: relative; grid-column: 2; orphans: 2; widows: 2; }
.rule dt { grid-column: 1; }
.rule dt + dd { grid-row: auto; }
.n { color: var(--faint); font-size: .72em; font-variant-numeric: tabular-nums; }
.rule dd > .n { position: absolute; left: -2.2rem; width: 1.8rem; text-align: right; top: .2em; }
.kind { font-weight: 600; }
var { font-style: italic; }
table { border-collapse: collapse; width: 100%; margin: .7rem 0; font-size: .92em; line-height: 1.35; }
caption { text-align: left; color: var(--faint); font-style: italic; padding-bottom: .2rem; break-after: avoid; }
th, td { text-align: left; vertical-align: top; padding: .25rem .5rem .25rem 0; border-bottom: 1px solid var(--line); font-weight: 400; overflow-wrap: anywhere; }
thead th { font-weight: 600; border-bottom: 1px solid var(--ink); overflow-wrap: break-word; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
td p, th p { margin: 0 0 .2rem; }
.grade { font-weight: 600; white-space: nowrap; }
.bands th:first-child, .examples th:first-child { width: 3rem; }
.bands th:nth-child(2), .bands td:nth-child(2) { width: 30%; }
.grades th:first-child { width: 9rem; }
.values, .quantities, .sources { table-layout: fixed; }
.values th:nth-child(1) { width: 25%; }
.values th:nth-child(2) { width: 13%; }
.values th:nth-child(4) { width: 19%; }
.quantities th:nth-child(1) { width: 22%; }
.quantities th:nth-child(2) { width: 28%; }
.quantities th:nth-child(4) { width: 19%; }
.sources th:nth-child(1) { width: 29%; }
.sources th:nth-child(3) { width: 15%; }
.sources th:nth-child(4) { width: 24%; }
figure { margin: .7rem 0; break-inside: avoid; }
figcaption, .beside { font-size: .92em; color: var(--ink); }
ul.beside { list-style: none; margin: 0 0 .7rem; padding: 0; }
ul.beside li { display: flex; gap: .6rem; }
ul.beside .n { flex: 0 0 1.6rem; text-align: right; }
p.beside { font-style: italic; color: var(--faint); }
svg.strip { width: 100%; height: auto; display: block; }
svg text { font-size: 10.5px; fill: var(--ink); }
svg .m { text-anchor: middle; }
svg .l { font-weight: 600; }
svg .n { text-anchor: end; font-size: 8.5px; fill: var(--faint); }
svg .v { font-weight: 600; }
svg .b { stroke: var(--ink); stroke-width: 1; }
svg .g { stroke: var(--faint); stroke-width: .7; stroke-dasharray: 1.5 2.5; fill: none; }
svg .i { stroke: var(--ink); stroke-width: 1.2; fill: none; }
svg circle { fill: var(--ink); }
/* Where it is narrow, names in the heads of tables break, and a drawing is moved sideways rather than made too small to read. */
@media screen and (max-width: 40rem) {
  thead th { overflow-wrap: anywhere; }
  .rule dl, .front dl { grid-template-columns: 1fr; }
  .rule dd { grid-column: 1; }
  figure { overflow-x: auto; }
  svg.strip { width: 38rem; }
}
@media print {
  html { font-size: 10pt; }
  body { max-width: none; padding: 0; margin: 0; }
  h2 { break-before: page; margin-top: 0; }
  .front h2 { break-before: auto; margin-top: 1.5rem; }
  a { text-decoration: none; }
  .rule { break-inside: auto; }
  nav .topics { columns: 2; column-gap: 2rem; }
}
`.trim();

/** The foot of every printed page: what the page belongs to, so that a loose page can be told, and its number. */
export const pageFoot = (text: string): string =>
  `@page { margin: 17mm 15mm 19mm; @bottom-left { content: "${text.replaceAll(/[^\w .,:-]/g, "")}"; font: 9pt serif; } @bottom-right { content: counter(page); font: 9pt serif; } }`;
