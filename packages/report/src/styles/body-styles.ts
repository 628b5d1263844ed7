/** Type and space of everything on the page; written for A4 with a text width of 172 mm. */
export const bodyStyles = `
:root { --ink: #10202f; --quiet: #47535f; --hair: #8d98a3; --signal: #d4460a; --margin: 31mm; --gap: 5mm; }
* { box-sizing: border-box; }
html { font: 400 10pt/1.42 Report, "Noto Sans", "DejaVu Sans", sans-serif; font-feature-settings: "tnum"; color: var(--ink); }
body { margin: 0; overflow-wrap: anywhere; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
h1, h2, h3, h4, h5, p, ul, dl, dd, table { margin: 0; padding: 0; font-size: inherit; }
h1, h2, h3, h4, h5, th, b { font-weight: 600; text-align: start; }
/* The padding keeps a heading at the top of a page clear of the page before: otherwise Chromium draws it there as
   well, unseen, and puts its words twice into the bookmark. */
h1, h2, h3, h4, h5 { break-after: avoid; break-inside: avoid; line-height: 1.2; padding-top: 1mm; text-wrap: balance; }
a { color: inherit; text-decoration: underline; text-decoration-thickness: 0.4pt; text-decoration-color: var(--hair); text-underline-offset: 1.5pt; }
p { orphans: 3; widows: 3; }
p + p { margin-top: 2mm; }
.prose { white-space: pre-line; }
.keep { break-inside: avoid; }
.small { font-size: 8.5pt; color: var(--quiet); margin-top: 2mm; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.page-of { display: inline-block; min-width: 1.7em; text-align: end; }

h2 { font-size: 19pt; letter-spacing: -0.01em; margin-bottom: 5mm; }
main > section { margin-top: 14mm; }
main > section:first-child { margin-top: 0; }

table { border-collapse: collapse; width: 100%; }
th, td { vertical-align: top; padding: 1.4mm 3mm 1.4mm 0; border-top: 0.4pt solid var(--hair); }
tr > :last-child { padding-inline-end: 0; }
tr { break-inside: avoid; }
thead { break-after: avoid; break-inside: avoid; }
tbody:first-of-type > tr:first-child { break-before: avoid; }
thead th { font-weight: 400; font-size: 8.5pt; color: var(--quiet); border-top: 0; }
tbody:last-child { border-bottom: 0.4pt solid var(--hair); }

.gauge { width: 2.6mm; height: 7.8mm; flex: none; vertical-align: text-top; }
.gauge .full { fill: var(--ink); stroke: var(--ink); stroke-width: 0.8; }
.gauge .empty { fill: none; stroke: var(--ink); stroke-width: 0.8; }
.gauge.before-use .full { fill: var(--signal); stroke: var(--signal); }

.beside { margin-top: 7mm; border-top: 0.4pt solid var(--ink); padding-top: 1.4mm; }
.beside > h3 { float: inline-start; width: var(--margin); line-height: 1.42; padding-top: 0; }
.beside > div { margin-inline-start: calc(var(--margin) + var(--gap)); }
.beside table tr:first-child > * { border-top: 0; }
.beside table tr:first-child > * { padding-top: 0; }
.facts tr:nth-child(-n+3) { break-after: avoid; }
.facts th { width: 38mm; font-weight: 400; color: var(--quiet); }
.plain tbody th { width: 38mm; font-weight: 400; white-space: nowrap; }
`;
