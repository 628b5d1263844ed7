import { createHash, randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { CallArgs } from '@garboard/contract/client';
import { hashToken } from '@garboard/core/people/tokens';
import { newId } from '@garboard/db/ids';
import { systems } from '@garboard/trade/vocabulary';
import { type Cast, ownBytes } from './cast.ts';
import type { Ledger } from './ledger.ts';
import { type PatientClient, patientClient, Refused, RunOver } from './patient-client.ts';

/** People at work, all the time, until told to stop. */
export interface Load {
  /** Everybody ends what they are at and waits; resolves when nobody has a request under way. */
  pause(): Promise<void>;
  resume(): void;
  /** Ends the load. What can't be ended because the service is away is given up. */
  stop(): Promise<void>;
}

interface Work {
  cast: Cast;
  ledger: Ledger;
  /** Waits here between two pieces of work while the load is paused. */
  turn(): Promise<void>;
  as(token?: string): PatientClient;
  base: string;
}

const findingOf = (title: string): CallArgs<'createFinding'>['body'] => ({
  ...{ title, system: 'through-hulls', observed: 'The lever does not move.', consequence: '' },
  ...{ recommendation: 'Renew the seacock.', urgency: 'within-days', withinDays: 30 },
  ...{ harms: ['flooding'], references: [], photoIds: [] },
});

/** Nothing that people ask for may be refused for longer, once nothing goes wrong any more. */
const patienceMs = 10 * 60_000;
/** Between two sign-ins from one network address, of which 300 in 5 minutes are let through. */
const signInEveryMs = 1_100;
const partBytes = 6_000;
const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** Starts everybody. @param options.pace milliseconds between two pieces of work of one person */
export function startLoad(base: string, cast: Cast, ledger: Ledger, options: { pace: number }): Load {
  const over = new AbortController();
  let paused: { gate: Promise<void>; open: () => void } | null = null;
  let busy = 0;
  const work: Work = {
    ...{ cast, ledger, base },
    as: (token) => patientClient(base, { ledger, over: over.signal, ...(token ? { token } : {}) }),
    async turn() {
      busy -= 1;
      await sleep(options.pace * (0.5 + Math.random()), undefined, { signal: over.signal }).catch(() => {});
      while (paused && !over.signal.aborted) await paused.gate;
      if (over.signal.aborted) throw new RunOver();
      busy += 1;
    },
  };
  const hand = async (name: string, shift: (work: Work) => Promise<void>) => {
    busy += 1;
    for (;;) {
      try {
        await shift(work);
      } catch (error) {
        if (error instanceof RunOver) break;
        ledger.violation(`${name}: ${error instanceof Refused ? error.message : String(error)}`);
        await sleep(500);
      }
    }
  };
  const hands = [
    hand('signing in', signIn),
    hand('writing findings', writeFindings),
    hand('sending photos in parts', sendInParts),
    hand('sending photos whole', sendWhole),
    hand('issuing and clearing', issueAndClear),
  ];
  return {
    async pause() {
      let open = () => {};
      const gate = new Promise<void>((done) => {
        open = done;
      });
      paused ??= { gate, open };
      const deadline = Date.now() + patienceMs;
      while (busy > 0 && Date.now() < deadline) await sleep(20);
      if (busy > 0)
        throw new Error(`Somebody still waits for an answer after ${patienceMs / 60_000} minutes.`);
    },
    resume() {
      paused?.open();
      paused = null;
    },
    async stop() {
      over.abort();
      paused?.open();
      paused = null;
      await Promise.all(hands);
    },
  };
}

async function signIn({ cast, ledger, turn, as }: Work): Promise<void> {
  for (const person of cast.signingIn) {
    await turn();
    await sleep(signInEveryMs);
    const { email } = person;
    const { token } = await as()('createSession', { body: { email, password: cast.password } });
    ledger.acknowledge('session', { tokenHash: hashToken(token), personId: person.id });
    await as(token)('getMe', {});
  }
}

/** A survey that is being written. */
async function beginSurvey({ cast, ledger, as }: Work, name: string): Promise<string> {
  const call = as(cast.firm.surveyor.token);
  const vessel = await call('createVessel', { body: { name }, idempotencyKey: randomUUID() });
  const key = randomUUID();
  const made = await call('createSurvey', {
    idempotencyKey: key,
    body: { vesselId: vessel.id, purpose: 'insurance', clearanceDecidedBy: 'surveyor' },
  });
  ledger.acknowledge('survey', { id: made.id, key });
  const attendances = [{ date: '2026-05-04', place: 'Ropewalk Yard', condition: 'ashore' as const }];
  await call('updateSurvey', { params: { id: made.id }, body: { attendances } });
  return made.id;
}

async function writeFinding(work: Work, surveyId: string, title: string): Promise<string> {
  const call = work.as(work.cast.firm.surveyor.token);
  const idempotencyKey = randomUUID();
  const args = {
    params: { id: surveyId },
    idempotencyKey,
    body: findingOf(title),
  };
  const made = await call('createFinding', args);
  work.ledger.acknowledge('finding', { id: made.id, surveyId, title, key: idempotencyKey });
  // Whoever pressed twice gets the same one.
  const again = Math.random() < 0.2 ? await call('createFinding', args) : made;
  if (again.id !== made.id) work.ledger.violation('A repeat under the same key made a second finding.');
  return made.id;
}

async function writeFindings(work: Work): Promise<void> {
  const surveyId = await beginSurvey(work, 'Grey Wagtail');
  for (let n = 1; n <= 40; n += 1) {
    await work.turn();
    await writeFinding(work, surveyId, `Seized seacock ${n} ${randomUUID()}`);
  }
}

async function sendInParts(work: Work): Promise<void> {
  const surveyId = await beginSurvey(work, 'Saltmeadow');
  const call = work.as(work.cast.firm.surveyor.token);
  for (let n = 1; n <= 30; n += 1) {
    await work.turn();
    const bytes = ownBytes(work.cast.jpeg, randomUUID());
    const [id, sha256] = [newId(), sha256Of(bytes)];
    let upload = await call('createUpload', {
      params: { id: surveyId },
      body: { id, name: `part ${n}.jpg`, bytes: bytes.length, sha256 },
    });
    while (upload.state === 'receiving') {
      const part = {
        offset: upload.received,
        bytes: bytes.subarray(upload.received, upload.received + partBytes),
      };
      upload = await call('sendUploadPart', { params: { id }, part }).catch(async (error: unknown) => {
        // What got no answer may have arrived: the client asks how far it came, as the telephone does.
        if (!(error instanceof Refused) || error.error.problem.status !== 409) throw error;
        return call('getUpload', { params: { id } });
      });
    }
    if (upload.state === 'kept')
      work.ledger.acknowledge('photo', { id: upload.photoId ?? '', surveyId, sha256 });
    else work.ledger.violation(`A good photo was refused: ${upload.problem}`);
  }
}

function formOf(bytes: Buffer<ArrayBuffer>, name: string, fields: Record<string, string> = {}): FormData {
  const form = new FormData();
  for (const [field, value] of Object.entries(fields)) form.append(field, value);
  form.append('file', new Blob([bytes], { type: 'image/jpeg' }), name);
  return form;
}

async function sendWhole(work: Work): Promise<void> {
  const surveyId = await beginSurvey(work, 'Tern Point');
  const call = work.as(work.cast.firm.surveyor.token);
  for (let n = 1; n <= 30; n += 1) {
    await work.turn();
    const bytes = ownBytes(work.cast.jpeg, randomUUID());
    const form = formOf(bytes, `whole ${n}.jpg`);
    const { items } = await call('uploadPhotos', { params: { id: surveyId }, form });
    const [photo] = items;
    if (photo) work.ledger.acknowledge('photo', { id: photo.id, surveyId, sha256: sha256Of(bytes) });
    else work.ledger.violation('An upload was acknowledged without a photo.');
  }
}

async function issueAndClear(work: Work): Promise<void> {
  const { cast, ledger, as } = work;
  await work.turn();
  const surveyId = await beginSurvey(work, 'Long Reach');
  const [firm, owner] = [as(cast.firm.surveyor.token), as(cast.owner.token)];
  const params = { id: surveyId };
  const buyer = { name: 'Jon Marl', email: `buyer-${surveyId}@marl.example` };
  for (const party of [
    { role: 'owner' as const, name: cast.owner.name, email: cast.owner.email },
    { role: 'buyer' as const, ...buyer },
  ]) {
    await firm('addParty', { params, body: { ...party, released: true }, idempotencyKey: randomUUID() });
  }
  const findingId = await writeFinding(work, surveyId, `Perished hose ${randomUUID()}`);
  const items = systems.map((system) => ({ system, reached: 'examined' as const }));
  await firm('replaceCoverage', { params, body: { items } });
  await work.turn();
  const key = randomUUID();
  const asked = await firm('createReport', { params, body: { kind: 'full' }, idempotencyKey: key });
  ledger.acknowledge('report', { id: asked.id, surveyId, key });
  const issued = await untilIssued(work, asked.id);
  ledger.acknowledge('issued', {
    id: issued.id,
    surveyId,
    revision: issued.revision ?? 0,
    sha256: issued.sha256 ?? '',
  });
  await work.turn();
  const evidenceKey = randomUUID();
  const bytes = ownBytes(cast.jpeg, randomUUID());
  const fields = { statement: 'Hose renewed.', workDoneBy: 'Ropewalk Yard', workDoneOn: '2026-05-20' };
  const form = formOf(bytes, 'after.jpg', fields);
  const sent = await owner('sendClearance', { params: { id: findingId }, form, idempotencyKey: evidenceKey });
  ledger.acknowledge('evidence', { id: sent.id, findingId, key: evidenceKey, files: [sha256Of(bytes)] });
  await work.turn();
  await firm('decideClearance', { params: { id: sent.id }, body: { decision: 'accept' } }).catch((error) => {
    // Decided already, by the request whose answer was lost.
    if (!(error instanceof Refused) || error.error.problem.type !== '/problems/already-decided') throw error;
  });
  ledger.acknowledge('decision', { id: sent.id });
}

/** Looks until the report is there, and asks once more for one that failed, as the button beside it does. */
async function untilIssued(work: Work, id: string) {
  const call = work.as(work.cast.firm.surveyor.token);
  for (;;) {
    const report = await call('getReport', { params: { id } });
    if (report.state === 'issued') return report;
    if (report.state === 'failed') {
      if (!report.problem) work.ledger.violation('A report failed without a reason.');
      await call('retryReport', { params: { id } }).catch((error: unknown) => {
        // Asked for by the request before, whose answer was lost.
        if (!(error instanceof Refused) || error.error.problem.status !== 409) throw error;
      });
    }
    await work.turn();
  }
}
