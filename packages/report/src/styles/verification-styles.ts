/** The verification page and its short form in letters. */
export const verificationStyles = `
#verification { break-before: page; margin-top: 0; }
#verification h3 { margin: 6mm 0 1.5mm; }
.verify { display: flex; gap: 6mm; align-items: flex-start; margin-bottom: 8mm; }
.qr-code { flex: none; width: 42mm; height: 42mm; margin: -4mm 0 0 -4mm; }
.verify dl { flex: 1; border-bottom: 0.4pt solid var(--hair); }
.verify dl div { border-top: 0.4pt solid var(--hair); padding: 1.4mm 0; }
.verify dl div:first-child { border-top: 0; padding-top: 0; }
.verify dt { font-size: 8.5pt; color: var(--quiet); }
.verify-code { font-size: 15pt; font-weight: 600; letter-spacing: 0.03em; }
.verify-hash { font-size: 9pt; }
.verify-strip { margin: 8mm 0 0; font-size: 8.5pt; align-items: center; }
.verify-strip .qr-code { width: 24mm; height: 24mm; margin: 0; }
`;
