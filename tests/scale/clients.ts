import { createHash, randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { type Answer, type CallArgs, createClient, ProblemError } from '@garboard/contract/client';
import type { RouteName } from '@garboard/contract/routes';
import { newId } from '@garboard/db/ids';
import { ownBytes } from '../faults/cast.ts';
import type { SurveyRows } from '../jobs/survey-rows.ts';

/** What was acknowledged to somebody, and so has to be there at the end. */
export interface Acknowledged {
  photos: { id: string; surveyId: string; sha256: string }[];
  reports: { id: string; surveyId: string }[];
  owners: string[];
  /** Requests that had to be sent again, for want of an answer or of a process that is ready. */
  sentAgain: number;
  /** What no kill excuses, in words. */
  wrong: string[];
}

export interface Job extends SurveyRows {
  token: string;
  /** How many photos are sent to this survey. */
  uploads: number;
  owner: { name: string; email: string };
}

/** Longer than a start under load takes. */
const patienceMs = 180_000;
const partBytes = 6_000;
const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** Does a survey's work as the portal does: what gets no answer is sent again under the same key. */
export async function doJob(baseUrl: string, job: Job, jpeg: Buffer, done: Acknowledged): Promise<void> {
  const client = createClient({ baseUrl, token: job.token });
  const call = async <N extends RouteName>(name: N, args: CallArgs<N>): Promise<Answer<N>> => {
    const end = Date.now() + patienceMs;
    for (;;) {
      try {
        return await client(name, { ...args, signal: AbortSignal.timeout(60_000) });
      } catch (error) {
        const refused = error instanceof ProblemError && ![502, 503].includes(error.problem.status);
        if (refused || Date.now() > end) throw error;
        done.sentAgain += 1;
        await sleep(250);
      }
    }
  };
  const params = { id: job.surveyId };
  const party = { role: 'owner' as const, ...job.owner, released: true };
  await call('addParty', { params, body: party, idempotencyKey: randomUUID() });
  done.owners.push(job.owner.email);

  const photoIds: string[] = [];
  for (let n = 0; n < job.uploads; n += 1) {
    const bytes = ownBytes(jpeg, randomUUID());
    const sha256 = sha256Of(bytes);
    const id = n % 2 === 0 ? await sendWhole(bytes, n) : await sendInParts(bytes, n, sha256);
    done.photos.push({ id, surveyId: job.surveyId, sha256 });
    photoIds.push(id);
  }
  const [findingId] = job.findingIds;
  if (findingId && photoIds.length > 0) {
    await call('updateFinding', { params: { id: findingId }, body: { photoIds: photoIds.slice(0, 4) } });
  }
  const asked = await call('createReport', { params, body: { kind: 'full' }, idempotencyKey: randomUUID() });
  for (const end = Date.now() + 20 * 60_000; ; ) {
    const report = await call('getReport', { params: { id: asked.id } });
    if (report.state === 'issued') break;
    if (report.state === 'failed') {
      done.wrong.push(`A report failed: ${report.problem}`);
      return;
    }
    if (Date.now() > end) {
      done.wrong.push(`A report is still ${report.state} after 20 minutes.`);
      return;
    }
    await sleep(500);
  }
  done.reports.push({ id: asked.id, surveyId: job.surveyId });

  async function sendWhole(bytes: Buffer<ArrayBuffer>, n: number): Promise<string> {
    const form = new FormData();
    form.append('file', new Blob([bytes], { type: 'image/jpeg' }), `whole-${n}.jpg`);
    const { items } = await call('uploadPhotos', { params, form });
    const [photo] = items;
    if (!photo) throw new Error('An upload was acknowledged without a photo.');
    return photo.id;
  }

  async function sendInParts(bytes: Buffer<ArrayBuffer>, n: number, sha256: string): Promise<string> {
    const id = newId();
    const body = { id, name: `parts-${n}.jpg`, bytes: bytes.length, sha256 };
    let upload = await call('createUpload', { params, body });
    while (upload.state === 'receiving') {
      const { received: offset } = upload;
      const part = { offset, bytes: bytes.subarray(offset, offset + partBytes) };
      upload = await call('sendUploadPart', { params: { id }, part }).catch((error: unknown) => {
        // What got no answer may have arrived: the client asks how far it came.
        if (!(error instanceof ProblemError) || error.problem.status !== 409) throw error;
        return call('getUpload', { params: { id } });
      });
    }
    if (upload.state !== 'kept') throw new Error(`A good photo was refused: ${upload.problem}`);
    return upload.photoId ?? '';
  }
}
