import type { CoverageAnswer, CoverageItem } from '@garboard/contract/coverage';
import { reachLabels } from '@garboard/trade/coverage';
import type { Answer } from '../api/client.ts';
import { isStatus } from '../api/problems.ts';
import { durable, openCapture } from './database.ts';
import type { KeptCoverage } from './kept.ts';
import { answerKey } from './reads.ts';
import type { Send } from './send-item.ts';
import { settle, settleSent } from './settle.ts';

/** Sends how far a system was examined; what somebody else has answered meanwhile is never written over unasked. */
export async function sendCoverage(send: Send, item: KeptCoverage): Promise<void> {
  try {
    await answer(send, item, item.fromVersion);
  } catch (error) {
    if (!isStatus(error, 412)) throw error;
    const { items } = await send.call('getCoverage', { params: { id: item.surveyId } });
    const theirs = items.find(({ system }) => system === item.system);
    if (theirs && item.tried && sameAnswer(theirs, item.tried)) await answer(send, item, theirs.version);
    else await giveChoice(send.personId, item, theirs ?? null);
  }
}

async function answer({ personId, call }: Send, item: KeptCoverage, version: number | null): Promise<void> {
  const answered = await call('answerCoverage', {
    params: { id: item.surveyId, system: item.system },
    body: item.answer,
    ...(version === null ? {} : { ifMatch: `"${version}"` }),
  });
  await remember(personId, item.surveyId, answered);
  if (!(await settleSent(personId, item, {}))) await buildOn(personId, item.id, answered.version);
}

const sameAnswer = (a: CoverageItem, b: CoverageAnswer) =>
  a.reached === b.reached && a.reason === b.reason && a.lookedFrom === b.lookedFrom;

async function giveChoice(personId: string, item: KeptCoverage, theirs: CoverageItem | null): Promise<void> {
  if (theirs) await remember(personId, item.surveyId, theirs);
  const words = theirs?.reached ? `“${reachLabels[theirs.reached]}”` : 'that it is unanswered';
  const reason = theirs?.reason ? `, because: ${theirs.reason}` : '';
  await settle(personId, item, {
    state: 'refused',
    theirs,
    refusal: `Somebody else has said meanwhile: ${words}${reason}. Choose which of the two stands.`,
  });
}

/** The answer was changed here while it was on its way: the later one builds on what has just arrived. */
async function buildOn(personId: string, id: string, version: number): Promise<void> {
  const db = await openCapture(personId);
  const tx = db.transaction('items', 'readwrite', durable);
  const now = await tx.store.get(id);
  if (now?.kind === 'coverage') await tx.store.put({ ...now, fromVersion: version });
  await tx.done;
}

/** Brings the telephone's copy up to date, so that the next answer builds on this one. */
async function remember(
  personId: string,
  surveyId: string,
  answered: Answer<'answerCoverage'>,
): Promise<void> {
  const db = await openCapture(personId);
  const tx = db.transaction('answers', 'readwrite');
  const key = answerKey('coverage', surveyId);
  const kept = await tx.store.get(key);
  if (kept) {
    const items = (kept.data as Answer<'getCoverage'>['items']).map((item) =>
      item.system === answered.system ? answered : item,
    );
    await tx.store.put({ ...kept, data: items });
  }
  await tx.done;
}
