/** The parts that have a shape of their own: cover, contents, index, findings, letters. */
export const sectionStyles = `
.cover { display: flex; flex-direction: column; height: var(--cover); break-after: page; }
.cover-top { display: flex; justify-content: space-between; gap: 8mm; border-bottom: 0.4pt solid var(--ink); padding-bottom: 2mm; }
.cover-top p { margin: 0; }
/* A name written from right to left stands where the others do. */
.cover h1, .cover p, .cover dd, .facts td { text-align: left; }
.firm { font-weight: 600; }
.cover-name { margin-top: 16mm; }
.cover-name p { margin: 0; }
.cover-name .purpose { font-size: 13pt; }
.cover-name h1 { font-size: 40pt; line-height: 1.1; letter-spacing: -0.02em; margin: 1mm 0 2.5mm -0.6mm; }
.cover-name h1.long { font-size: 28pt; }
.cover-name h1.longest { font-size: 20pt; line-height: 1.2; }
.lead-photo { display: block; width: 100%; flex: 0 1 auto; min-height: 30mm; object-fit: contain; object-position: 0 0; margin-top: 9mm; }
.cover-facts { margin: 9mm 0; }
.cover-facts div { display: grid; grid-template-columns: var(--margin) 1fr; column-gap: var(--gap); padding: 0.7mm 0; }
.cover-facts dt { color: var(--quiet); }
.tally { list-style: none; display: grid; grid-template-columns: repeat(4, 1fr); gap: 4mm; margin-top: auto; padding-top: 3mm; border-top: 0.4pt solid var(--ink); }
.tally li { display: flex; gap: 2.5mm; align-items: flex-end; line-height: 1.2; }
.tally .gauge { width: 4mm; height: 12mm; }
.tally b, .tally li > span > span { display: block; }
.tally .none { color: var(--quiet); }

.contents ul { list-style: none; }
.contents > ul > li { border-top: 0.4pt solid var(--hair); padding: 0.7mm 0; break-inside: avoid; }
.contents > ul > li:last-child { border-bottom: 0.4pt solid var(--hair); }
.contents a { display: flex; justify-content: space-between; text-decoration: none; }
.contents ul ul { columns: 2; column-gap: 10mm; padding: 0.5mm 0 0 var(--gap); font-size: 9pt; }
.contents ul ul li { break-inside: avoid; }

main > section.one-page + section { margin-top: 12mm; }
.one-page { break-inside: avoid; break-before: page; }
.one-page h3 { font-size: 12pt; margin: 4mm 0 1mm; }
.one-page .small { margin-top: 1mm; }
.one-page h2 + h3 { margin-top: 0; }
.first th, .first td, .counts th, .counts td { padding-block: 0.55mm; }
.first tbody th { font-weight: 400; }
.first .number { width: 16mm; white-space: nowrap; font-weight: 600; }
.first .gauge { width: 1.8mm; height: 5.4mm; margin-inline-end: 1mm; }
.first .due { width: 42mm; }
.first .page { width: 11mm; text-align: end; }
.counts { font-size: 8.5pt; line-height: 1.3; }
.counts tbody > tr > * { padding-block: 0.3mm; }
.counts thead th { line-height: 1.2; padding-block: 0; vertical-align: bottom; }
.counts th { font-weight: 400; }
.counts thead th:not(:first-child), .counts td { width: 25mm; text-align: end; }
.counts .total > * { font-weight: 600; border-top: 0.8pt solid var(--ink); }
.profile svg { display: block; width: 100%; max-height: var(--profile); }
.urgencies { margin-top: 3mm; }
.urgencies .gauge-cell { width: 8mm; }
.urgencies th { width: 54mm; }
.cautions { margin-top: 5mm; border-inline-start: 1.6pt solid var(--ink); padding-inline-start: 5mm; }
.cautions h3 { margin-bottom: 1.5mm; }
.cautions ul { padding-inline-start: 4mm; }
.cautions li + li { margin-top: 1.2mm; }

.index { margin-top: 8mm; }
.index caption { text-align: start; break-after: avoid; padding-bottom: 1.5mm; }
.index caption > * { vertical-align: middle; }
.index caption > span { display: inline-block; margin-inline-start: 2mm; line-height: 1.2; }
.index th, .index td { padding-block: 1.1mm; }
#terms, #reading, #contents { break-inside: avoid; }
.index caption b { display: block; font-size: 12pt; }
.index tbody th { font-weight: 400; }
.index .system { width: 47mm; }
.index .due { width: 33mm; }
.index .page { width: 11mm; text-align: end; }
.number { width: 12mm; }
.work .number { width: 16mm; white-space: nowrap; }
.work tbody .number { font-weight: 600; }
.work .number .gauge { margin-inline-end: 1mm; }
.work tbody th p { font-weight: 400; }
.work .due { width: 27mm; }
.work .stands { width: 32mm; }
.work .done { width: 32mm; border-inline-start: 0.4pt solid var(--hair); padding-inline-start: 3mm; }
.work .overdue { display: block; color: var(--signal); }
.index .state { display: block; font-size: 8.5pt; color: var(--quiet); }
.work, .index { break-inside: auto; }
#work.sheet > p { margin-bottom: 5mm; break-inside: avoid; break-after: avoid; }
#contents h2, #reading h2 { margin-bottom: 3.5mm; }
#contents + #reading { margin-top: 9mm; }
#reading { font-size: 9.5pt; line-height: 1.38; }

.group > h3 { font-size: 13pt; margin: 10mm 0 3mm; }
.group:first-of-type > h3 { margin-top: 0; }
.finding { margin-bottom: 9mm; }
.finding-start { break-inside: avoid; break-after: avoid; }
.finding-title { border-top: 0.8pt solid var(--ink); padding-top: 2mm; display: flex; gap: var(--gap); font-size: 12.5pt; margin-bottom: 2.5mm; }
.finding-number { flex: none; width: var(--margin); white-space: pre; }
.finding-margin { float: inline-start; width: var(--margin); break-inside: avoid; font-size: 9pt; line-height: 1.3; }
.finding-text { margin-inline-start: calc(var(--margin) + var(--gap)); }
.finding-start + .finding-text > :first-child { margin-top: 2mm; }
.finding::after { content: ""; display: block; clear: both; }
.finding-margin .urgency { display: flex; gap: 2.2mm; font-size: 9.5pt; }
.finding-margin .urgency .gauge { width: 3.4mm; height: 10.2mm; }
.finding-margin .urgency p > * { display: block; }
.finding-margin p + p, .finding-margin .urgency + p { margin-top: 2.5mm; }
.finding-margin .label { display: block; color: var(--quiet); }
.finding-margin .page-of { display: inline; }
.to-do { margin: 2.5mm 0; padding-inline-start: 3.5mm; border-inline-start: 1.6pt solid var(--ink); }
.finding.before-use .to-do { border-inline-start-color: var(--signal); }
.items { margin: 1.5mm 0 2mm; padding-inline-start: 5mm; }
.items li { break-inside: avoid; }
.items .state { display: block; font-size: 8.5pt; color: var(--quiet); }
.work .items { font-weight: 400; }
.proof { color: var(--quiet); }
.cost { margin-top: 2mm; }
.costs .basis { width: 40mm; }
.costs .amount { width: 38mm; text-align: end; white-space: nowrap; }
.costs .page { width: 11mm; text-align: end; }
.costs tbody th { font-weight: 400; }
.costs .total > * { border-top: 0.8pt solid var(--ink); padding-bottom: 4mm; }
.costs .total th, .costs .total .amount { font-weight: 600; }
.costs tr { break-inside: avoid; }
.references { margin-top: 2mm; font-size: 8.5pt; color: var(--quiet); }
.photo-row { display: flex; gap: 3mm; align-items: flex-start; margin-top: 4mm; break-inside: avoid; }
.photo { flex: none; break-inside: avoid; }
.photo img { display: block; }
.diagram { display: grid; grid-template-columns: 80mm 1fr; column-gap: 5mm; align-items: end; margin-top: 4mm; break-inside: avoid; }
.diagram svg { display: block; width: 80mm; height: auto; }
.present { margin-top: 2mm; }
.decoded { font-size: 9pt; color: var(--quiet); margin-top: 0.6mm; }
.facts .decoded + .decoded { margin-top: 0.2mm; }
.photo-caption { margin-top: 1mm; font-size: 8.5pt; line-height: 1.3; }
.photo .taken { color: var(--quiet); }

.signature { display: grid; grid-template-columns: 2fr 1.4fr 1fr; column-gap: 6mm; margin-top: 20mm; }
.signature p { margin: 0; }
.sign-line { border-top: 0.4pt solid var(--ink); padding-top: 1mm; font-size: 8.5pt; color: var(--quiet); }
.signer { grid-column: 1 / -1; padding-top: 4mm; }
.signature .signer { margin-top: 3mm; }
.signer > * { display: block; }
.terms div { display: grid; grid-template-columns: 40mm 1fr; column-gap: var(--gap); padding: 1.1mm 0; border-top: 0.4pt solid var(--hair); break-inside: avoid; }
.terms dt { font-weight: 600; }

.letterhead { border-bottom: 0.4pt solid var(--ink); padding-bottom: 3mm; }
.letterhead .firm { font-size: 15pt; }
.letterhead p { margin: 0; white-space: pre-wrap; }
.letter-top { display: flex; justify-content: space-between; gap: 10mm; margin: 9mm 0 10mm; }
.letter-top p { margin: 0; }
.letter h1 { font-size: 15pt; margin-bottom: 4mm; }
.addendum h1 { margin-top: 9mm; }
.letter h2 { font-size: 12.5pt; margin: 8mm 0 3mm; }
.letter > section { margin-top: 0; }
.letter .finding-title { font-size: 11pt; }
.letter .finding { margin-bottom: 5mm; }
.letter > .closing { margin-top: 8mm; break-before: avoid; }
.cleared { break-inside: avoid; }
.letter .signature { margin-top: 16mm; }
.revisions .issued { width: 38mm; }
.revisions tbody th, .changes tbody th { font-weight: 400; }
.changes .how { width: 62mm; }
.changes { margin-top: 1mm; }
#revisions h3 { margin: 6mm 0 1.5mm; }
.addendum > section { margin-top: 8mm; }
.addendum #statement h2 { margin-top: 10mm; }
.fingerprint { font-size: 7.5pt; }
`;
