/** Worksheets: small, quiet type; the verdict in words beside the heading. */
export const worksheetStyles = `
.worksheet { margin-top: 5mm; border-top: 0.8pt solid var(--ink); border-bottom: 0.4pt solid var(--ink); padding: 1.6mm 0 2.2mm; font-size: 8.5pt; line-height: 1.35; }
.worksheet-start { break-inside: avoid; break-after: avoid; margin-bottom: 2mm; }
.worksheet-title { display: flex; justify-content: space-between; gap: 6mm; font-size: 10pt; padding-top: 0.4mm; }
.worksheet-title .verdict { flex: none; }
.worksheet.unsatisfactory .verdict { color: var(--signal); }
.worksheet-kind { color: var(--quiet); }
.worksheet p + p { margin-top: 0.8mm; }
.worksheet th, .worksheet td { padding: 0.7mm 2.5mm 0.7mm 0; }
.worksheet th { font-weight: 400; }
.worksheet-figures { display: grid; grid-template-columns: 1fr 1fr; gap: 6mm; align-items: start; }
.worksheet-figures > :only-child { grid-column: 1 / -1; }
.figures thead th { font-weight: 600; color: var(--ink); }
.figures th { width: 58%; color: var(--quiet); }
.worksheet-rows { margin-top: 2.5mm; }
.worksheet caption { text-align: start; font-weight: 600; padding-bottom: 0.6mm; break-after: avoid; }
.working { margin-top: 2.5mm; }
.working th { width: 34%; color: var(--quiet); }
.drawing { margin: 3mm 0 0; break-inside: avoid; }
.drawing svg { display: block; width: 100%; max-height: 120mm; }
.drawing figcaption { color: var(--quiet); margin-top: 0.6mm; }
.worksheet-notes { margin-top: 2mm; font-size: 7.5pt; color: var(--quiet); }
`;
