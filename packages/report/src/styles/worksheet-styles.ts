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
.entered .what { color: var(--quiet); }
.found { columns: 2; column-gap: 6mm; margin-top: 1.2mm; }
.found > div { display: grid; grid-template-columns: 58% 1fr; column-gap: 2.5mm; padding: 0.35mm 0; border-top: 0.3pt solid var(--hair); break-inside: avoid; }
.found dt { color: var(--quiet); }
.worksheet-rows { margin-top: 1.6mm; }
.worksheet caption { text-align: start; font-weight: 600; padding-bottom: 0.6mm; break-after: avoid; }
.working { margin-top: 1.6mm; }
.working th { width: 34%; color: var(--quiet); }
.worksheet .working tr > * { padding-block: 0.15mm; border-top: 0; }
.worksheet-rows tr > * { overflow-wrap: break-word; }
.worksheet-rows thead th { font-size: 8pt; }
.drawing { margin: 3mm 0 0; break-inside: avoid; }
.drawing svg { display: block; width: 100%; max-height: 95mm; }
.drawing-title { color: var(--quiet); margin-top: 0.6mm; }
.worksheet-notes { margin-top: 1.4mm; font-size: 7.5pt; line-height: 1.3; color: var(--quiet); }
`;
