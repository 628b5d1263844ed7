import type { Database, Tx } from '@garboard/db/database';
import { buildFirm } from '@garboard/seed/builders';
import { expect, it, onTestFinished } from 'vitest';
import { onServer } from '../support/databases.ts';
import { startServer } from '../support/server.ts';

/** The same database, in which something happens just before findings are written, once it has been said what. */
function meddledWith(db: Database, before: () => Promise<unknown>): Database {
  const withFindings = (tx: Tx): Tx =>
    new Proxy(tx, {
      get(target, key) {
        if (key !== 'finding') return Reflect.get(target, key);
        const updateMany = async (...args: Parameters<Tx['finding']['updateMany']>) => {
          await before();
          return target.finding.updateMany(...args);
        };
        return new Proxy(target.finding, {
          get: (findings, name) => (name === 'updateMany' ? updateMany : Reflect.get(findings, name)),
        });
      },
    });
  const transaction: Database['prisma']['$transaction'] = db.prisma.$transaction.bind(db.prisma);
  const run = (work: (tx: Tx) => Promise<unknown>) => transaction((tx: Tx) => work(withFindings(tx)));
  const prisma = new Proxy(db.prisma, {
    get: (target, key) => (key === '$transaction' ? run : Reflect.get(target, key)),
  });
  return { prisma, reads: db.reads, close: () => db.close() };
}

it('what somebody else removes while it is being worked on is told as gone, not as a fault of ours', async () => {
  let meddle: () => Promise<unknown> = async () => undefined;
  const server = await startServer({ wrap: (db) => meddledWith(db, () => meddle()) });
  onTestFinished(() => server.close());
  const firm = await buildFirm(server.db, ['surveyor']);
  const surveyor = server.as(firm.surveyor);
  const { id: vesselId } = (await surveyor.post('/v1/vessels').send({ name: 'Sedge Wren' }).expect(201)).body;
  const begun = { vesselId, purpose: 'condition', attendances: [] };
  const survey = (await surveyor.post('/v1/surveys').send(begun).expect(201)).body;
  const seen = { system: 'gas', title: 'Hose cracked', urgency: 'note', observed: 'Cracked.' };
  const { id } = (
    await surveyor
      .post(`/v1/surveys/${survey.id}/findings`)
      .send({ ...seen, recommendation: 'Renew.' })
      .expect(201)
  ).body;
  meddle = () => onServer(server.databaseUrl, `DELETE FROM findings WHERE id = '${id}'`);
  const { status, body } = await surveyor
    .post(`/v1/findings/${id}/withdrawal`)
    .send({ reason: 'Seen by mistake.' });
  expect(status).toBe(404);
  expect(body.detail).toMatch(/removed this in the meantime/);
});
