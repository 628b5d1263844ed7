// Writes the permission table into DEVELOPERS.md: npm run permission-table
import { readFileSync, writeFileSync } from 'node:fs';
import { endMark, permissionTable, startMark } from './permission-table.ts';

const file = new URL('../../DEVELOPERS.md', import.meta.url);
const text = readFileSync(file, 'utf8');
const [from, to] = [text.indexOf(startMark), text.indexOf(endMark)];
if (from < 0 || to < from) throw new Error(`DEVELOPERS.md needs the lines ${startMark} and ${endMark}`);
writeFileSync(file, text.slice(0, from) + permissionTable() + text.slice(to + endMark.length));
