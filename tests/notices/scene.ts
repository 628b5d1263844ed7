import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openLogger } from '@garboard/platform/logger';
import type { Mailer } from '@garboard/platform/mail';
import { buildFirm, buildPerson, type Signed, testSecret } from '@garboard/seed/builders';
import type { PartyRole } from '@garboard/trade/vocabulary';
import type { JobDeps } from '@garboard/worker/job-deps';
import { doJob } from '@garboard/worker/registry';
import { WarmBrowser } from '@garboard/worker/render/browser';
import type { TestServer } from '../support/server.ts';

const mailJobs = ['event.fan-out', 'mail.deliver'];

/** The worker’s side of being told, job by job and by a clock of its own. */
export function mailWorker(server: TestServer, mail: Mailer) {
  const worker = { now: new Date() };
  const deps: JobDeps = {
    ...{ db: server.db, store: server.store, log: openLogger('test-mail', 'fatal'), mail },
    clock: () => worker.now,
    env: {
      publicUrl: 'https://garboard.example',
      dataDir: server.dataDir,
      secret: testSecret,
      webhookAllowPrivate: false,
    },
    browser: new WarmBrowser(() => Promise.reject(new Error('no browser is needed'))),
  };
  return {
    ...{ worker, deps },
    later(ms: number) {
      worker.now = new Date(worker.now.getTime() + ms);
    },
    /** Does what waits in the outbox, and what comes of that. */
    async work(jobs = mailJobs): Promise<void> {
      for (;;) {
        const rows = await inTransaction(server.db, [], async (tx) => {
          const waiting = await tx.outbox.findMany({
            where: { job: { in: jobs }, dispatchedAt: null },
            orderBy: { id: 'asc' },
          });
          await tx.outbox.updateMany({
            where: { id: { in: waiting.map((row) => row.id) } },
            data: { dispatchedAt: worker.now },
          });
          return waiting;
        });
        if (rows.length === 0) return;
        for (const { id, job, data } of rows) {
          await doJob(deps, { id, name: job, data, attempt: 1, lastAttempt: false });
        }
      }
    },
  };
}

/** A survey with one issued finding that must be cleared, an owner and an insurer who decides. */
export async function toldScene(server: TestServer) {
  const firm = await buildFirm(server.db, ['principal', 'surveyor']);
  const surveyor = server.as(firm.surveyor);
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Grey Wagtail' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'insurance', timeZone: 'Europe/Lisbon' };
  const survey = await surveyor.post('/v1/surveys').send(body).expect(201);
  const surveyId: string = survey.body.id;
  const addFinding = async (title: string, fields: { dueOn?: string; state?: string } = {}) => {
    const finding = { system: 'gas', title, observed: 'x', recommendation: 'y', urgency: 'before-use' };
    const made = await surveyor.post(`/v1/surveys/${surveyId}/findings`).send(finding).expect(201);
    const { dueOn, state = 'open' } = fields;
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.finding.update({
        where: { id: made.body.id },
        data: { state, clearing: true, dueOn: dueOn ? new Date(dueOn) : null },
      }),
    );
    return made.body.id as string;
  };
  const join = async (role: PartyRole, released = true): Promise<Signed & { partyId: string }> => {
    const person = await buildPerson(server.db, { name: `The ${role}` });
    const partyId = newId();
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.party.create({
        data: {
          ...{ id: partyId, firmId: firm.id, surveyId, personId: person.id },
          ...{ role, name: person.name, released },
        },
      }),
    );
    return { ...person, partyId };
  };
  const sendEvidence = (from: Signed, findingId: string) =>
    server
      .as(from)
      .post(`/v1/findings/${findingId}/clearances`)
      .field('statement', 'Hose renewed.')
      .field('workDoneBy', 'Fennel Slip Yard')
      .field('workDoneOn', '2026-06-01')
      .expect(201);
  return { firm, surveyor, surveyId, number: survey.body.number as string, addFinding, join, sendEvidence };
}
