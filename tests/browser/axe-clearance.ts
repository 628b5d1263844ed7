import type { Visit } from './axe-visits.ts';
import type { World } from './axe-world.ts';
import type { Visitor } from './visitor.ts';

const at =
  (rest: string) =>
  ({ issued }: World) =>
    `/surveys/${issued.id}${rest}`;
const nothing =
  (rest: string) =>
  ({ empty }: World) =>
    `/surveys/${empty}${rest}`;
const finding =
  (n: number) =>
  ({ issued }: World) =>
    `/findings/${issued.findings[n]}`;

/** Chooses the first radio of those words. */
async function choose({ page }: Visitor, words: string): Promise<void> {
  await page.locator(`::-p-xpath(//label[span[normalize-space()="${words}"]])`).click();
}

/** Evidence, decisions, more time, comments and visits in their states. */
export const clearanceVisits: Visit[] = [
  { as: 'surveyor', path: at('/clearance'), reads: 'findings left' },
  { as: 'surveyor', path: nothing('/clearance'), state: 'empty', reads: 'Nothing to clear' },
  { as: 'surveyor', path: at('/re-inspection'), reads: 'No finding looked at yet' },
  { as: 'surveyor', path: nothing('/re-inspection'), state: 'empty', reads: 'Nothing is left' },
  {
    ...{ as: 'surveyor', path: at('/re-inspection'), state: 'seen', reads: 'Date of the visit' },
    act: async (visitor) => {
      await choose(visitor, 'May stay as it is, within a limit');
      await visitor.find('textbox', 'The limit within which it may stay');
    },
  },
  {
    ...{ as: 'surveyor', path: finding(1), state: 'more time', reads: 'Give more time' },
    act: async (visitor) => {
      await visitor.press('Give more time');
      await visitor.find('dialog', 'More time for finding 2');
    },
  },
  { as: 'surveyor', path: finding(1), state: 'comments', reads: 'Is the seacock bronze?' },
  {
    ...{ as: 'owner', path: finding(1), state: 'measuring again', reads: 'What was done' },
    act: async (visitor) => {
      await visitor.page.$$eval('details', (all) => {
        for (const one of all) one.open = true;
      });
      await visitor.choose('Another measurement (optional)', 'Gas leak-down test');
      await visitor.find('textbox', 'Pressure at the start');
    },
  },
  {
    ...{ as: 'owner', path: finding(1), state: 'throwing away', reads: 'What was done' },
    act: async (visitor) => {
      await visitor.fill('What was done', 'The seacock is renewed.');
      await visitor.press('Throw it away');
      await visitor.find('alertdialog', 'Throw away what you began?');
    },
  },
  {
    ...{ as: 'insurer', path: finding(0), state: 'one over the other', reads: 'One over the other' },
    ...{ act: (visitor) => choose(visitor, 'One over the other') },
  },
  {
    ...{ as: 'insurer', path: finding(0), state: 'with a limit', reads: 'Your decision' },
    act: async (visitor) => {
      await visitor.click('radio', 'Accept as it is: not put right, acceptable within a limit');
      await visitor.find('textbox', 'The limit within which it is accepted');
    },
  },
  {
    ...{ as: 'insurer', path: finding(0), state: 'item by item', reads: 'Decide on each of the 2 items' },
    act: async (visitor) => {
      await visitor.click('checkbox', 'Decide on each of the 2 items by itself');
      await choose(visitor, 'Return: something is still missing');
    },
  },
  {
    ...{ as: 'principal', path: () => '/firm', state: 'due dates', reads: 'Due dates' },
    act: async (visitor) => {
      await visitor.press('Edit the due dates');
      await choose(visitor, 'On a day of the year');
    },
  },
  {
    ...{ as: 'surveyor', state: 'items of a finding', reads: 'Save the finding' },
    path: ({ drafting }) => `/surveys/${drafting.id}/findings/${drafting.findings[1]}/edit`,
    act: (visitor) => visitor.press('Add an item'),
  },
];
