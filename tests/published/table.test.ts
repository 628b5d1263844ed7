import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { allChecks } from './checks/all.ts';
import { worksheetTable } from './support/table.ts';

it('DEVELOPERS.md lists every worksheet with its sources and checks as they are (npm run worksheet-table)', () => {
  const text = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
  expect(text.includes(worksheetTable(allChecks))).toBe(true);
});
