import { mkdir, writeFile } from 'node:fs/promises';
import type { Visit } from './axe-visits.ts';

const path = ({ drafting }: Parameters<Visit['path']>[0]) => `/surveys/${drafting.id}/bring-in`;

/** Chooses a sheet of three rows: one in order, one with a remark, one that can't come in. */
async function choose(visitor: Parameters<NonNullable<Visit['act']>>[0]): Promise<void> {
  const file = 'tests/artefacts/axe/findings.csv';
  await mkdir('tests/artefacts/axe', { recursive: true });
  await writeFile(
    file,
    'Title,System,Urgency,Photos,Mark\nHose,gas,note,,A\nRail,deck,note,gone.jpg,\nMast,hulk,soon,,\n',
  );
  await visitor.give('Choose files or a ZIP', [file]);
  await visitor.reads('Sheet: findings.csv');
}

/** Bringing in a survey: which, what, and what would come of it. */
export const bringInVisits: Visit[] = [
  { as: 'surveyor', path: () => '/surveys/bring-in', reads: 'Open surveys, newest first' },
  {
    ...{ as: 'surveyor', path: () => '/surveys/bring-in?q=zzz', state: 'none' },
    reads: 'No open survey matches',
  },
  {
    ...{ as: 'surveyor', path, reads: 'You see what each row becomes' },
    act: (visitor) =>
      visitor.page.$$eval('details', (all) => {
        for (const one of all) one.open = true;
      }),
  },
  { as: 'surveyor', path, state: 'chosen', reads: 'You see what each row becomes', act: choose },
  {
    ...{ as: 'surveyor', path, state: 'looked at', reads: 'You see what each row becomes' },
    act: async (visitor) => {
      await choose(visitor);
      await visitor.press('See what comes in');
      await visitor.reads('2 become findings, 1 can’t come in');
      await visitor.press('Bring in 2 findings');
      await visitor.reads('Say first what is to become of the rows');
    },
  },
];
