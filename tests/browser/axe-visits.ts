import { bringInVisits } from './axe-bring-in.ts';
import { clearanceVisits } from './axe-clearance.ts';
import { engagementVisits } from './axe-engagement.ts';
import type { Role, World } from './axe-world.ts';
import type { Visitor } from './visitor.ts';

/** One state of one page: who looks at it, where it is, what is done there, and words that stand there then. */
export interface Visit {
  as: Role;
  path: (world: World) => string;
  /** What the state is called, when the page has several. */
  state?: string;
  /** Words that say the page has come. */
  reads: string;
  act?: (visitor: Visitor) => Promise<void>;
}

const at =
  (part: 'drafting' | 'issued', rest = '') =>
  (world: World) =>
    `/surveys/${world[part].id}${rest}`;
const nothing =
  (rest: string) =>
  ({ empty }: World) =>
    `/surveys/${empty}${rest}`;
const fixed = (path: string) => () => path;
const photo =
  (rest = '') =>
  ({ drafting }: World) =>
    `/surveys/${drafting.id}/photos/${drafting.photos[0]}${rest}`;
const onBoard =
  (rest = '') =>
  ({ drafting }: World) =>
    `/capture/${drafting.id}${rest}`;
const editing = ({ drafting }: World) => `/surveys/${drafting.id}/findings/${drafting.findings[0]}/edit`;
const finding =
  (n: number) =>
  ({ issued }: World) =>
    `/findings/${issued.findings[n]}`;

/** Opens everything that a page keeps folded. */
async function unfold(visitor: Visitor): Promise<void> {
  await visitor.page.$$eval('details', (all) => {
    for (const one of all) one.open = true;
  });
}

async function onPhoto(visitor: Visitor, key: 'f' | 'c' | 'Delete'): Promise<void> {
  const row = await visitor.page.waitForSelector('[role="row"]');
  await row?.focus();
  await visitor.page.keyboard.press(key);
}

const outside: Visit[] = [
  { as: 'nobody', path: fixed('/'), reads: 'Accounts are made by invitation' },
  {
    ...{ as: 'nobody', path: fixed('/sign-in'), state: 'refused', reads: 'Accounts are made by invitation' },
    act: async (visitor) => {
      await visitor.fill('E-mail', 'nobody@nowhere.example');
      await visitor.fill('Password', 'not the right one');
      await visitor.press('Sign in');
      await visitor.page.waitForSelector('[role="alert"]');
    },
  },
  { as: 'nobody', path: fixed('/welcome'), reads: 'This link is not complete' },
  {
    ...{ as: 'nobody', state: 'invited', reads: 'Choose a password' },
    path: ({ welcome }) => `/welcome#token=${welcome.invited}`,
  },
  {
    ...{ as: 'nobody', state: 'first account', reads: 'Set up your firm' },
    path: ({ welcome }) => `/welcome#token=${welcome.first}`,
  },
  {
    ...{ as: 'nobody', state: 'come back by a link', reads: 'Welcome back' },
    path: ({ welcome }) => `/welcome#token=${welcome.back}`,
  },
  {
    ...{ as: 'nobody', state: 'code after a link', reads: 'The six digits' },
    path: ({ welcome }) => `/welcome#token=${welcome.coded}`,
    act: (visitor) => visitor.press('I don’t have the app at hand: use a recovery code'),
  },
  {
    ...{ as: 'nobody', state: 'link run out', reads: 'This link no longer works' },
    path: fixed('/welcome#token=a-token-that-nobody-was-ever-sent'),
    act: async (visitor) => {
      await visitor.fill('E-mail', 'nobody@nowhere.example');
      await visitor.press('Send me a new link');
      await visitor.reads('Look in your mail');
    },
  },
  {
    ...{ as: 'nobody', path: fixed('/sign-in'), state: 'link asked', reads: 'Send me a link' },
    act: async (visitor) => {
      await visitor.fill('E-mail', 'somebody@nowhere.example');
      await visitor.press('Send me a link');
      await visitor.reads('Look in your mail');
    },
  },
  {
    ...{ as: 'nobody', state: 'shared report', reads: 'A survey report is shared with you' },
    path: ({ shared }) => `/shared#token=${shared.passcode}`,
  },
  {
    ...{ as: 'nobody', state: 'wrong passcode', reads: 'A survey report is shared with you' },
    path: ({ shared }) => `/shared#token=${shared.passcode}`,
    act: async (visitor) => {
      await visitor.fill('Passcode', 'wrong one');
      await visitor.press('Read the report');
      await visitor.page.waitForSelector('[role="alert"]');
    },
  },
  {
    ...{ as: 'nobody', state: 'shared report read', reads: 'A survey report is shared with you' },
    path: ({ shared }) => `/shared#token=${shared.open}`,
    act: async (visitor) => {
      await visitor.press('Read the report');
      await visitor.reads('Warp chafed');
      await unfold(visitor);
    },
  },
  { as: 'nobody', path: fixed('/shared'), state: 'share link cut', reads: 'This link is not complete' },
  {
    ...{ as: 'nobody', state: 'share link ended', reads: 'This link no longer works' },
    path: fixed('/shared#token=a-token-that-nobody-was-ever-sent'),
  },
  {
    ...{ as: 'nobody', state: 'reading ended', reads: 'Reading has ended' },
    path: fixed('/shared/0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f'),
  },
  { as: 'nobody', path: fixed('/verify'), reads: 'Is this document genuine?' },
  { as: 'nobody', path: fixed('/verify/nonsense'), state: 'no code', reads: 'A code has 20 letters' },
  {
    ...{ as: 'nobody', state: 'found', reads: 'Firm' },
    path: ({ issued }) => `/verify/${issued.code}`,
  },
  { as: 'nobody', path: fixed('/capture'), reads: 'Accounts are made by invitation' },
];

const surveys: Visit[] = [
  { as: 'surveyor', path: fixed('/surveys'), reads: 'Tansy Rook' },
  {
    ...{ as: 'surveyor', path: fixed('/surveys'), state: 'none', reads: 'Tansy Rook' },
    ...{ act: (visitor) => visitor.fill('Vessel or number', 'zzz', 'searchbox') },
  },
  { as: 'surveyor', path: fixed('/surveys/new'), reads: 'New survey' },
  {
    ...{ as: 'surveyor', path: fixed('/surveys/new'), state: 'new vessel', reads: 'New survey' },
    act: async (visitor) => {
      await visitor.press('Enter a new vessel');
      await visitor.find('dialog', 'New vessel');
    },
  },
  { as: 'surveyor', path: at('drafting'), reads: 'Where it stands' },
  {
    ...{ as: 'surveyor', path: at('drafting'), state: 'edited', reads: 'Where it stands' },
    ...{ act: (visitor) => visitor.press('Edit particulars') },
  },
  { as: 'surveyor', path: at('drafting', '/attendances'), reads: 'Place' },
  { as: 'surveyor', path: nothing('/attendances'), state: 'empty', reads: 'Attendances' },
  { as: 'surveyor', path: at('drafting', '/parties'), reads: 'Sorrel Quayle' },
  {
    ...{ as: 'surveyor', path: at('drafting', '/parties'), state: 'ending access', reads: 'Sorrel Quayle' },
    ...{ act: (visitor) => visitor.press('End access of Sorrel Quayle') },
  },
  { as: 'surveyor', path: nothing('/parties'), state: 'empty', reads: 'Nobody outside the firm' },
  { as: 'surveyor', path: at('issued', '/history'), reads: 'History' },
  { as: 'surveyor', path: fixed('/no/such/page'), state: 'not found', reads: 'Garboard' },
];

const photos: Visit[] = [
  { as: 'surveyor', path: at('drafting', '/photos'), reads: 'photos shown', act: unfold },
  {
    ...{ as: 'surveyor', path: at('drafting', '/photos'), state: 'chosen', reads: 'photos shown' },
    act: async (visitor) => {
      const row = await visitor.page.waitForSelector('[role="row"]');
      await row?.focus();
      await visitor.page.keyboard.press('Space');
      await visitor.reads('1 photo chosen');
    },
  },
  {
    ...{ as: 'surveyor', path: at('drafting', '/photos'), state: 'into a finding', reads: 'photos shown' },
    ...{ act: (visitor) => onPhoto(visitor, 'f') },
  },
  {
    ...{ as: 'surveyor', path: at('drafting', '/photos'), state: 'caption', reads: 'photos shown' },
    ...{ act: (visitor) => onPhoto(visitor, 'c') },
  },
  {
    ...{ as: 'surveyor', path: at('drafting', '/photos'), state: 'deleting', reads: 'photos shown' },
    ...{ act: (visitor) => onPhoto(visitor, 'Delete') },
  },
  { as: 'surveyor', path: nothing('/photos'), state: 'empty', reads: 'No photos yet' },
  { as: 'surveyor', path: at('drafting', '/photos/pairs'), reads: 'Earlier and now' },
  { as: 'surveyor', path: photo(), reads: 'with its marks' },
  {
    ...{ as: 'surveyor', state: 'with its pair', reads: 'Part the pair' },
    path: ({ drafting }) => `/surveys/${drafting.id}/photos/${drafting.photos[1]}`,
  },
  {
    ...{ as: 'surveyor', path: photo(), state: 'choosing the earlier', reads: 'with its marks' },
    act: async (visitor) => {
      await visitor.press('Choose the earlier photo');
      await visitor.page.waitForSelector('[role="dialog"] img');
    },
  },
  { as: 'surveyor', path: photo('/marks'), reads: '1 arrow' },
  {
    ...{ as: 'surveyor', path: photo('/marks'), state: 'a label chosen', reads: '1 arrow' },
    ...{ act: (visitor) => visitor.page.$eval('[aria-label^="2."]', (mark) => (mark as SVGElement).focus()) },
  },
  { as: 'surveyor', path: fixed('/library'), reads: 'Photo library' },
  { as: 'surveyor', path: fixed('/library?q=zzzz'), state: 'none', reads: 'No photo matches' },
];

const findings: Visit[] = [
  { as: 'surveyor', path: at('drafting', '/findings'), reads: 'In the order of the report', act: unfold },
  { as: 'surveyor', path: nothing('/findings'), state: 'empty', reads: 'No findings yet' },
  {
    ...{ as: 'surveyor', path: at('drafting', '/findings'), state: 'keys', reads: 'In the order' },
    ...{ act: (visitor) => visitor.press('Keyboard') },
  },
  { as: 'surveyor', path: at('drafting', '/findings/new'), reads: 'Known defect', act: unfold },
  {
    ...{ as: 'surveyor', path: at('drafting', '/findings/new'), state: 'choosing', reads: 'Known defect' },
    act: async (visitor) => {
      await visitor.page.keyboard.type('seacock');
      await visitor.page.waitForSelector('[role="option"]');
      await visitor.page.keyboard.press('ArrowDown');
    },
  },
  {
    ...{ as: 'surveyor', state: 'from an entry', reads: 'To complete the texts', act: unfold },
    path: at('drafting', '/findings/new?entry=seacock-dezincified'),
  },
  { as: 'surveyor', path: editing, reads: 'Save the finding', act: unfold },
  {
    ...{ as: 'surveyor', path: editing, state: 'choosing photos', reads: 'Save the finding' },
    act: async (visitor) => {
      await visitor.press("Choose from the survey's photos");
      await visitor.find('dialog', 'Photos of this finding');
    },
  },
];

const measured: Visit[] = [
  { as: 'surveyor', path: at('drafting', '/worksheets'), reads: 'Gas leak-down test' },
  { as: 'surveyor', path: nothing('/worksheets'), state: 'empty', reads: 'Nothing measured yet' },
  { as: 'surveyor', path: at('drafting', '/worksheets/new'), reads: 'Moisture map' },
  { as: 'surveyor', path: at('drafting', '/worksheets/new/gas-leak-down'), reads: 'Still needed' },
  { as: 'surveyor', path: at('drafting', '/worksheets/new/moisture-map'), reads: 'Save the worksheet' },
  {
    ...{ as: 'surveyor', state: 'with result', reads: 'Unsatisfactory', act: unfold },
    path: ({ drafting }) => `/surveys/${drafting.id}/worksheets/${drafting.worksheet}`,
  },
  {
    ...{ as: 'surveyor', state: 'deleting', reads: 'Unsatisfactory' },
    path: ({ drafting }) => `/surveys/${drafting.id}/worksheets/${drafting.worksheet}`,
    act: (visitor) => visitor.press('Delete this worksheet'),
  },
  {
    ...{ as: 'surveyor', reads: 'Unsatisfactory', act: unfold },
    path: ({ drafting }) => `/worksheets/${drafting.worksheet}`,
  },
  { as: 'surveyor', path: at('drafting', '/coverage'), reads: 'not answered yet' },
  {
    ...{ as: 'surveyor', path: at('drafting', '/coverage'), state: 'the rest', reads: 'not answered yet' },
    ...{ act: (visitor) => visitor.press('Mark the rest as examined') },
  },
  { as: 'office', path: at('drafting', '/coverage'), state: 'read', reads: 'Coverage' },
  { as: 'surveyor', path: at('drafting', '/equipment'), reads: 'Liferaft' },
  { as: 'surveyor', path: nothing('/equipment'), state: 'empty', reads: 'No equipment recorded' },
  { as: 'surveyor', path: at('drafting', '/equipment/new'), reads: 'What it is' },
  {
    ...{ as: 'surveyor', reads: 'Good until' },
    path: ({ drafting }) => `/surveys/${drafting.id}/equipment/${drafting.equipment}`,
  },
  { as: 'surveyor', path: fixed('/expiries'), reads: 'Liferaft' },
];

const reports: Visit[] = [
  { as: 'surveyor', path: at('drafting', '/report'), reads: 'Before it is issued' },
  { as: 'surveyor', path: at('issued', '/report'), state: 'issued', reads: 'Issued so far' },
  { as: 'office', path: at('issued', '/report'), state: 'office', reads: 'Issued so far' },
  { as: 'surveyor', path: at('drafting', '/review'), state: 'to ask', reads: 'Ask for a review' },
  {
    ...{ as: 'principal', state: 'to decide', reads: 'Is the date right?', act: unfold },
    path: ({ reviewing }) => `/surveys/${reviewing}/review`,
  },
  { as: 'surveyor', path: ({ issued }) => `/reports/${issued.report}`, reads: 'Files and verification' },
  {
    ...{ as: 'owner', state: 'owner', reads: 'Files and verification', act: unfold },
    path: ({ issued }) => `/reports/${issued.report}`,
  },
  { as: 'surveyor', path: at('issued', '/reading'), state: 'surveyor', reads: 'Warp chafed' },
  { as: 'surveyor', path: finding(0), state: 'surveyor', reads: 'Hose renewed.' },
  { as: 'surveyor', path: fixed('/recommendations'), reads: 'Seacock seized' },
  { as: 'insurer', path: fixed('/recommendations/vessels'), reads: 'Tansy Rook' },
  { as: 'insurer', path: fixed('/recommendations?due=overdue'), state: 'insurer', reads: 'Order' },
  { as: 'owner', path: fixed('/surveys'), state: 'owner', reads: 'Tansy Rook' },
  { as: 'owner', path: at('issued'), state: 'owner', reads: 'Warp chafed' },
  { as: 'owner', path: at('issued', '/reading'), state: 'owner', reads: 'Warp chafed' },
  { as: 'owner', path: at('issued', '/parties'), state: 'owner', reads: 'Invite the yard', act: unfold },
  {
    ...{ as: 'surveyor', path: at('issued', '/parties'), state: 'issued', reads: 'Who was given the report' },
    ...{ act: unfold },
  },
  { as: 'owner', path: finding(0), state: 'evidence sent', reads: 'Hose renewed.' },
  { as: 'owner', path: finding(1), state: 'evidence awaited', reads: 'What was done' },
  {
    ...{ as: 'owner', path: finding(0), state: 'photo large', reads: 'Hose renewed.' },
    act: async (visitor) => {
      await visitor.press('1 Seacock, lever at its stop');
      await visitor.find('dialog', 'Photo 1 of 2');
    },
  },
  { as: 'owner', path: fixed('/recommendations'), state: 'owner', reads: 'Seacock seized' },
  { as: 'owner', path: ({ issued }) => `/worksheets/${issued.worksheet}`, state: 'owner', reads: 'Gas' },
  { as: 'owner', path: fixed('/capture'), state: 'owner', reads: 'own people' },
  {
    ...{ as: 'insurer', path: finding(0), state: 'decision', reads: 'Your decision' },
    ...{ act: (visitor) => visitor.click('radio', 'Return: something is still missing') },
  },
];

const ofFirm: Visit[] = [
  { as: 'surveyor', path: fixed('/vessels'), reads: 'Tansy Rook' },
  { as: 'surveyor', path: fixed('/vessels/new'), reads: 'Hull' },
  { as: 'surveyor', path: ({ vessel }) => `/vessels/${vessel}`, reads: 'Tansy Rook' },
  { as: 'surveyor', path: ({ vessel }) => `/vessels/${vessel}/edit`, reads: 'Hull' },
  { as: 'surveyor', path: fixed('/catalogue'), reads: 'Through-hull' },
  { as: 'surveyor', path: fixed('/catalogue?q=zzzzzz'), state: 'none', reads: 'No entry matches' },
  {
    as: 'surveyor',
    path: fixed('/catalogue/gas-leak-found'),
    reads: 'Gas system does not hold its pressure',
  },
  { as: 'principal', path: fixed('/catalogue/new'), reads: 'New entry', act: unfold },
  { as: 'principal', path: fixed('/catalogue/gas-leak-found/edit'), reads: 'In our words', act: unfold },
  { as: 'surveyor', path: fixed('/firm'), reads: 'Who works for the firm' },
  { as: 'principal', path: fixed('/firm'), state: 'principal', reads: 'Who works for the firm' },
  {
    ...{ as: 'principal', path: fixed('/firm'), state: 'new key', reads: 'Signing key' },
    ...{ act: (visitor) => visitor.press('Replace the key') },
  },
  {
    ...{ as: 'principal', path: fixed('/firm'), state: 'removing the key', reads: 'Signing key' },
    act: async (visitor) => {
      await visitor.press('Remove it');
      await visitor.find('alertdialog', 'Remove the signing key?');
    },
  },
];

const account: Visit[] = [
  { as: 'surveyor', path: fixed('/notices'), reads: 'Only what is not read' },
  { as: 'surveyor', path: fixed('/notices/settings'), reads: 'How you are told' },
  { as: 'surveyor', path: fixed('/account'), reads: 'Where you are signed in' },
  {
    ...{ as: 'surveyor', path: fixed('/account'), state: 'new password', reads: 'Berth register' },
    ...{ act: (visitor) => visitor.press('Change the password') },
  },
  {
    ...{ as: 'surveyor', path: fixed('/account'), state: 'second factor', reads: 'Second factor' },
    act: async (visitor) => {
      await visitor.press('Set up a second factor');
      await visitor.press('Go on');
      await visitor.reads('Let the app read this');
    },
  },
  {
    ...{ as: 'surveyor', path: fixed('/account'), state: 'new key', reads: 'Berth register' },
    ...{ act: (visitor) => visitor.press('Make a key') },
  },
  {
    ...{ as: 'surveyor', path: fixed('/account'), state: 'ending a key', reads: 'Berth register' },
    ...{ act: (visitor) => visitor.press('End the key Berth register') },
  },
  { as: 'owner', path: fixed('/account'), state: 'owner', reads: 'You have no keys' },
  {
    ...{ as: 'surveyor', path: fixed('/account'), state: 'erasing', reads: 'Your data' },
    ...{ act: (visitor) => visitor.press('Erase your account') },
  },
  { as: 'owner', path: fixed('/systems'), reads: 'No system is told yet' },
  {
    ...{ as: 'owner', path: fixed('/systems'), state: 'adding', reads: 'No system is told yet' },
    act: async (visitor) => {
      await visitor.press('Add a system');
      await visitor.fill('Name of the system', 'Policy register');
      await visitor.fill('Address', 'https://register.owner.example/told');
      await visitor.press('Add the system');
      await visitor.reads('Take the secret now');
    },
  },
  {
    as: 'owner',
    path: fixed('/systems/0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f'),
    state: 'unknown',
    reads: 'No such system',
  },
  {
    ...{ as: 'surveyor', state: 'new share link', reads: 'Share this report by a link' },
    path: ({ issued }) => `/reports/${issued.report}`,
    act: (visitor) => visitor.press('Make a link'),
  },
];

const boatyard: Visit[] = [
  { as: 'surveyor', path: fixed('/capture'), reads: 'Which survey?' },
  { as: 'surveyor', path: onBoard(), reads: 'Which system?' },
  { as: 'surveyor', path: onBoard('/gas'), reads: 'Write or speak a note' },
  { as: 'surveyor', path: onBoard('/gas/note'), reads: 'What do you see?' },
  { as: 'surveyor', path: onBoard('/gas/coverage'), reads: 'Not reached' },
  {
    ...{ as: 'surveyor', path: onBoard('/gas/coverage'), state: 'refused', reads: 'Not reached' },
    act: async (visitor) => {
      await visitor.click('radio', 'Not reached');
      await visitor.press('Keep');
      await visitor.reads('Say why');
    },
  },
  { as: 'surveyor', path: onBoard('/gas/worksheets'), reads: 'Which worksheet?', act: unfold },
  {
    as: 'surveyor',
    path: onBoard('/gas/worksheets/gas-leak-down'),
    reads: 'Pressure at the start',
    act: unfold,
  },
  { as: 'surveyor', path: fixed('/capture/kept'), reads: 'Sent and unsent' },
  {
    ...{ as: 'surveyor', path: onBoard('/gas/note'), state: 'kept', reads: 'What do you see?' },
    act: async (visitor) => {
      await visitor.fill('What do you see?', 'Hose perished at the regulator');
      await visitor.press('Keep the note');
      await visitor.reads('Photos taken now belong to the note');
    },
  },
  { as: 'surveyor', path: fixed('/capture/kept'), state: 'with a note', reads: 'Hose perished' },
];

/** Every page of the portal in every state that looks different. */
export const visits: readonly Visit[] = [
  ...outside,
  ...surveys,
  ...photos,
  ...findings,
  ...measured,
  ...reports,
  ...clearanceVisits,
  ...bringInVisits,
  ...engagementVisits,
  ...ofFirm,
  ...account,
  ...boatyard,
];
