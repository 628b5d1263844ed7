import type { Survey } from '@garboard/contract/surveys';
import type { WorksheetKind } from '@garboard/contract/worksheets';
import { call } from '../api/client.ts';
import { mayDo } from '../app/roles.ts';
import { announce } from './changes.ts';
import { openCapture } from './database.ts';
import type { FindingTitle, SurveyBrief } from './kept.ts';

export type ReadName = 'surveys' | 'kinds' | 'kind' | 'coverage' | 'findings';

/** The name under which an answer of the server is kept. */
export const answerKey = (name: ReadName, of = '') => `${name}:${of}`;

/** An answer as it was last heard, with its time. */
export interface Heard<T> {
  at: number;
  data: T;
}

/** What the telephone has heard of this, or null when never. */
export async function heard<T>(personId: string, name: ReadName, of = ''): Promise<Heard<T> | null> {
  const db = await openCapture(personId);
  const found = await db.get('answers', answerKey(name, of));
  return found ? { at: found.at, data: found.data as T } : null;
}

async function remember(personId: string, name: ReadName, of: string, data: unknown): Promise<void> {
  const db = await openCapture(personId);
  await db.put('answers', { key: answerKey(name, of), at: Date.now(), data });
}

const open = new Set<Survey['state']>(['enquiry', 'booked', 'attended', 'drafting', 'in-review', 'issued']);
/** Surveys that are still being worked on are made ready for the time without signal, the newest ones. */
const underWay = new Set<Survey['state']>(['booked', 'attended', 'drafting']);
const readyAtMost = 12;

function briefOf(survey: Survey): SurveyBrief {
  return {
    id: survey.id,
    name: `${survey.vesselName}, ${survey.number}`,
    purpose: survey.purpose,
    may: {
      photos: mayDo('photo.write', survey),
      findings: mayDo('finding.write', survey),
      coverage: mayDo('coverage.write', survey),
      worksheets: mayDo('worksheet.write', survey),
    },
  };
}

/**
 * Asks the server for all that is needed where there is no signal, and keeps it with its time.
 *
 * @throws TypeError without a connection, ProblemError when the server refuses
 */
export async function hearAll(personId: string): Promise<void> {
  const { items } = await call('listSurveys', { query: { limit: 200 } });
  const surveys = items
    .filter((survey) => open.has(survey.state))
    .map((survey) => ({ survey, brief: briefOf(survey) }));
  const mine = surveys.filter(({ brief }) => brief.may.photos);
  await remember(
    personId,
    'surveys',
    '',
    mine.map(({ brief }) => brief),
  );
  announce('read');
  await hearKinds(personId);
  const ready = mine.filter(({ survey }) => underWay.has(survey.state)).slice(0, readyAtMost);
  for (const { brief } of ready) await hearSurvey(personId, brief);
}

/** Asks for the coverage and the findings' titles of one survey. */
export async function hearSurvey(personId: string, survey: SurveyBrief): Promise<void> {
  const params = { id: survey.id };
  const [coverage, findings] = await Promise.all([
    call('getCoverage', { params }),
    call('listFindings', { params, query: { limit: 200 } }),
  ]);
  const titles: FindingTitle[] = findings.items.map(({ id, number, system, title }) => ({
    id,
    number,
    system,
    title,
  }));
  await remember(personId, 'coverage', survey.id, coverage.items);
  await remember(personId, 'findings', survey.id, titles);
  announce('read');
}

/** Few enough that the page's own requests are not held up. */
const atOnce = 4;

/** The worksheets there are; the form of each is only asked for when it is new. */
async function hearKinds(personId: string): Promise<void> {
  const { items } = await call('listWorksheetKinds', {});
  await remember(personId, 'kinds', '', items);
  const renewed = async ({ kind, version }: (typeof items)[number]) => {
    const known = await heard<WorksheetKind>(personId, 'kind', kind);
    if (known?.data.version === version) return;
    await remember(personId, 'kind', kind, await call('getWorksheetKind', { params: { kind } }));
  };
  for (let from = 0; from < items.length; from += atOnce) {
    await Promise.all(items.slice(from, from + atOnce).map(renewed));
  }
  announce('read');
}
