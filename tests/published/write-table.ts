// Writes the table of worksheets, sources and checks into DEVELOPERS.md: npm run worksheet-table
import { readFileSync, writeFileSync } from 'node:fs';
import { allChecks } from './checks/all.ts';
import { endMark, startMark, worksheetTable } from './support/table.ts';

const file = new URL('../../DEVELOPERS.md', import.meta.url);
const text = readFileSync(file, 'utf8');
const [from, to] = [text.indexOf(startMark), text.indexOf(endMark)];
if (from < 0 || to < from) throw new Error(`DEVELOPERS.md needs the lines ${startMark} and ${endMark}`);
writeFileSync(file, text.slice(0, from) + worksheetTable(allChecks) + text.slice(to + endMark.length));
