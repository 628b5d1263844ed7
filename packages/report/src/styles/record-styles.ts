/** The tables of what was reached and of the equipment. */
export const recordStyles = `
.record-part { margin-top: 9mm; }
.record-part > h3 { font-size: 13pt; margin-bottom: 2.5mm; }
.record-part > table { margin-top: 4mm; }
.record-part .unreached { border-inline-start: 1.6pt solid var(--signal); padding-inline-start: 3.5mm; }
.record-part th { font-weight: 400; }
.coverage .system { width: 47mm; }
.coverage .reached { width: 36mm; white-space: nowrap; }
.coverage .not-reached .reached { color: var(--signal); }
.coverage .from, .equipment .place { color: var(--quiet); }
.coverage p + .from { margin-top: 0.4mm; }
.equipment { font-size: 9pt; }
.equipment .of-system th { font-weight: 600; padding-top: 2.5mm; break-after: avoid; }
.equipment .of-system { break-after: avoid; }
.equipment .place, .equipment .serial span { display: block; }
.equipment th p { margin-top: 0.6mm; font-size: 8.5pt; color: var(--quiet); }
.equipment .count { width: 17mm; }
.equipment .serial { width: 38mm; }
.equipment .date { width: 29mm; }
.equipment .expired { color: var(--signal); }
`;
