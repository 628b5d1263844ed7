import { hashToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm } from '@garboard/seed/builders';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { statementsOf } from '../support/statements.ts';

// Who asks is looked up in the same message as what is asked for, as whom the session belonged to a moment ago. What has
// changed meanwhile, behind the back of this process, must count at once.

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.close());

async function surveyed() {
  const firm = await buildFirm(server.db, ['surveyor']);
  const surveyor = server.as(firm.surveyor);
  const { id: vesselId } = (await surveyor.post('/v1/vessels').send({ name: 'Sedge Wren' }).expect(201)).body;
  const survey = await surveyor
    .post('/v1/surveys')
    .send({ vesselId, purpose: 'condition', attendances: [] })
    .expect(201);
  const findings = `/v1/surveys/${survey.body.id}/findings`;
  await surveyor.get(findings).expect(200);
  await surveyor.get('/v1/jobs').expect(200);
  return { firm, surveyor, findings, sessionHash: hashToken(firm.surveyor.token) };
}

it('who asks and what is asked for travel together', async () => {
  const { surveyor } = await surveyed();
  const sent = await statementsOf(() => surveyor.get('/v1/jobs').expect(200));
  expect(sent[0]?.text).toContain('garboard_session');
  expect(sent).toHaveLength(2);
});

it('a session that was ended elsewhere is good for nothing more', async () => {
  const { surveyor, findings, sessionHash } = await surveyed();
  await server.db.prisma.session.delete({ where: { tokenHash: sessionHash } });
  for (const path of [findings, '/v1/jobs', '/v1/jobs?cursor=nonsense', '/v1/catalogue']) {
    const answer = await surveyor.get(path);
    expect(answer.status, path).toBe(401);
    expect(JSON.stringify(answer.body), path).not.toContain('Sedge');
  }
});

it('one that has run out is too', async () => {
  const { surveyor, findings, sessionHash } = await surveyed();
  const expiresAt = new Date(Date.now() - 1_000);
  await server.db.prisma.session.update({ where: { tokenHash: sessionHash }, data: { expiresAt } });
  await surveyor.get(findings).expect(401);
});

it('who was dismissed sees nothing of the firm any more, though signed in', async () => {
  const { firm, surveyor, findings } = await surveyed();
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.firmMember.deleteMany({ where: { personId: firm.surveyor.id } }),
  );
  await surveyor.get(findings).expect(404);
  expect((await surveyor.get('/v1/jobs').expect(200)).body.items).toEqual([]);
});

it('who was engaged elsewhere sees that firm’s work at once', async () => {
  const { surveyor, findings } = await surveyed();
  const other = await buildFirm(server.db, ['principal']);
  const stranger = server.as(other.principal);
  await stranger.get('/v1/jobs').expect(200);
  await stranger.get(findings).expect(404);
  const { firmId } = (await surveyor.get('/v1/jobs').expect(200)).body.items[0];
  await inTransaction(server.db, [firmId], (tx) =>
    tx.firmMember.create({ data: { id: newId(), firmId, personId: other.principal.id, role: 'office' } }),
  );
  await stranger.get(findings).expect(200);
});

it('a session in use is noted as used, and so doesn’t run out', async () => {
  const { surveyor, findings, sessionHash } = await surveyed();
  const lastSeenAt = new Date(Date.now() - 20 * 60_000);
  await server.db.prisma.session.update({ where: { tokenHash: sessionHash }, data: { lastSeenAt } });
  await surveyor.get(findings).expect(200);
  const after = await server.db.prisma.session.findUniqueOrThrow({ where: { tokenHash: sessionHash } });
  expect(Date.now() - after.lastSeenAt.getTime()).toBeLessThan(60_000);
});
