import type { Readable } from 'node:stream';
import type { JobData } from '@garboard/contract/jobs';
import type { Actor } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { cleanFileName } from '@garboard/core/files/file-name';
import { inspectUpload } from '@garboard/core/files/inspect-upload';
import type { Upload } from '@garboard/core/files/received-file';
import { finishImport } from '@garboard/core/imports/finish-import';
import {
  failImport,
  type RunningImport,
  takeUpImport,
  takeZippedPhotos,
} from '@garboard/core/imports/run-import';
import { readFromZip, zippedPhotoBytes } from '@garboard/core/imports/zip-photos';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { Refusal } from '@garboard/core/problems';
import { inTransaction } from '@garboard/db/database';
import { ObjectTooLargeError, type StagedObject } from '@garboard/platform/object-store';
import { NoRetryError } from '@garboard/platform/queue';
import type { Attempt, JobDeps } from '../job-deps.ts';

/** Photos taken in one transaction: few, so that a death loses little and progress shows. */
const batch = 8;

type Deps = Pick<JobDeps, 'db' | 'store' | 'log' | 'clock'>;
type Taken = { name: string; upload: Upload; staged: StagedObject | null };

/**
 * Brings a sheet of findings into its survey: first the photos out of the ZIP, a few at a time, then all findings at
 * once. Taken up again after a death it goes on with the photos that are left.
 */
export async function importSurveyJob(
  deps: Deps,
  { firmId, importId: id }: JobData<'survey.import'>,
  { lastAttempt }: Attempt,
): Promise<void> {
  const within = <T>(actor: Actor, work: (ctx: Ctx) => Promise<T>) =>
    inTransaction(deps.db, [firmId], (tx) => work({ ...deps, tx, actor }));
  const garboard: Actor = { kind: 'system', firmIds: [firmId] };
  try {
    const running = await within(garboard, (ctx) => takeUpImport(ctx, id));
    if (!running) return;
    const { actor } = running;
    await takePhotos(deps, running, async (files) => {
      await within(actor, (ctx) => takeZippedPhotos(ctx, { id, surveyId: running.surveyId, files }));
    });
    const findings = await within(actor, (ctx) => finishImport(ctx, id));
    deps.log.info({ importId: id, findings }, 'a sheet of findings was brought in');
  } catch (error) {
    const refused = error instanceof Refusal;
    if (refused || lastAttempt) {
      const problem = refused
        ? error.message
        : 'It could not be brought in because of a fault on our side. Nothing was half done; try it again.';
      await within(garboard, (ctx) => failImport(ctx, { id, problem }));
    }
    throw refused ? new NoRetryError(error.message) : error;
  }
}

async function takePhotos(
  deps: Deps,
  { zipSha256, zipName, left, timeZone }: RunningImport,
  add: (files: readonly Taken[]) => Promise<void>,
): Promise<void> {
  if (!zipSha256 || left.length === 0) return;
  const path = await deps.store.localFile(zipSha256);
  let waiting: Taken[] = [];
  const flush = async () => {
    const files = waiting;
    waiting = [];
    try {
      if (files.length > 0) await add(files);
    } catch (error) {
      // What the transaction kept and then undid is removed, unless another row names it.
      await collect(deps, files);
      throw error;
    } finally {
      await Promise.all(files.map(({ staged }) => staged?.discard()));
    }
  };
  try {
    await readFromZip(path, zipName, new Set(left), async (name, open) => {
      waiting.push(await receive(deps, { name, open, timeZone }));
      if (waiting.length >= batch) await flush();
    });
    await flush();
  } finally {
    await Promise.all(waiting.map(({ staged }) => staged?.discard()));
  }
}

/** Unpacks one photo into the store's waiting area and looks at it, like an upload. */
async function receive(
  { store, clock }: Deps,
  { name, open, timeZone }: { name: string; open: () => Promise<Readable>; timeZone: string },
): Promise<Taken> {
  const fileName = cleanFileName(name);
  let fault: unknown;
  let staged: StagedObject | null = null;
  try {
    const stream = await open().catch((error: unknown) => {
      fault = error;
      throw error;
    });
    stream.on('error', (error) => {
      fault = error;
    });
    staged = await store.stage(stream, { maxBytes: zippedPhotoBytes });
  } catch (error) {
    if (!(error instanceof ObjectTooLargeError) && error !== fault) throw error;
    if (error === fault) {
      const problem = 'It is damaged in the ZIP: it can’t be unpacked. Pack the folder again.';
      return { name, staged, upload: { accepted: [], refused: [{ name, problem, tooLarge: false }] } };
    }
  }
  const received = { name: fileName, staged, maxBytes: zippedPhotoBytes };
  const upload = await inspectUpload([received], { accepts: 'pictures', timeZone, now: clock() });
  return { name, staged, upload };
}

async function collect({ db, store }: Deps, files: readonly Taken[]): Promise<void> {
  for (const { staged } of files) {
    if (staged && (await store.has(staged.sha256))) {
      await inTransaction(db, [], (tx) => enqueue(tx, 'object.collect', { sha256: staged.sha256 }));
    }
  }
}
