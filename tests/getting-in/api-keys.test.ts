import { hashToken } from '@garboard/core/people/tokens';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor'>>>;
let other: typeof firm;
let insurer: Signed;
/** A survey of each firm to which the insurer is a party; of the first firm one more without. */
let surveys: { own: string; elsewhere: string; unshared: string };
beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['principal', 'surveyor']);
  other = await buildFirm(server.db, ['principal', 'surveyor']);
  insurer = await buildPerson(server.db);
  const surveyOf = async (person: Signed, share: boolean): Promise<string> => {
    const api = server.as(person);
    const vessel = await api.post('/v1/vessels').send({ name: 'Sedge' }).expect(201);
    const survey = await api
      .post('/v1/surveys')
      .send({ vesselId: vessel.body.id, purpose: 'insurance' })
      .expect(201);
    const { name, email } = insurer;
    const party = { role: 'insurer', name, email, released: true };
    if (share) await api.post(`/v1/surveys/${survey.body.id}/parties`).send(party).expect(201);
    return survey.body.id;
  };
  surveys = {
    own: await surveyOf(firm.surveyor, true),
    elsewhere: await surveyOf(other.surveyor, true),
    unshared: await surveyOf(firm.surveyor, false),
  };
});
afterAll(() => server?.close());
beforeEach(() => server.db.prisma.attemptCount.deleteMany());

async function keyOf(
  person: Signed,
  fields: { firmId: string; role: string; access?: string; expiresOn?: string },
) {
  const body = { name: 'Portfolio sync', access: 'read', ...fields };
  const made = await server.as(person).post('/v1/api-keys').send(body).expect(201);
  return { ...made.body, as: server.as({ ...person, token: made.body.token }) } as {
    id: string;
    token: string;
    as: ReturnType<TestServer['as']>;
  };
}

const numbers = (answer: { body: { items: { id: string }[] } }) => answer.body.items.map(({ id }) => id);

describe('a key for programs', () => {
  it('is shown once, kept as a hash, and listed by its beginning and last use', async () => {
    const key = await keyOf(firm.surveyor, { firmId: firm.id, role: 'surveyor' });
    expect(key.token).toMatch(/^gbk_[\w-]{43}$/);
    const row = await server.db.prisma.$queryRaw<object[]>`SELECT 1 FROM api_keys`;
    // Without a person the table is empty: keys are their maker's own affair.
    expect(row).toEqual([]);
    await key.as.get('/v1/me').expect(200);
    const list = await server.as(firm.surveyor).get('/v1/api-keys').expect(200);
    const listed = list.body.items.find((item: { id: string }) => item.id === key.id);
    expect(listed).toMatchObject({
      ...{ name: 'Portfolio sync', role: 'surveyor', access: 'read', firm: { id: firm.id } },
      ...{ beginning: key.token.slice(0, 8), expiresAt: null },
    });
    expect(Date.now() - Date.parse(listed.lastUsedAt)).toBeLessThan(60_000);
    expect(JSON.stringify(list.body)).not.toContain(hashToken(key.token));
    expect((await server.as(firm.principal).get('/v1/api-keys').expect(200)).body.items).toEqual([]);
  });

  it('acts in its one role in its one firm', async () => {
    // The insurer, who works for nobody, is party to surveys of two firms.
    const all = await server.as(insurer).get('/v1/surveys').expect(200);
    expect(numbers(all).sort()).toEqual([surveys.own, surveys.elsewhere].sort());
    const key = await keyOf(insurer, { firmId: firm.id, role: 'insurer' });
    expect(numbers(await key.as.get('/v1/surveys').expect(200))).toEqual([surveys.own]);
    await key.as.get(`/v1/surveys/${surveys.elsewhere}`).expect(404);
    await key.as.get(`/v1/surveys/${surveys.unshared}`).expect(404);
    const me = await key.as.get('/v1/me').expect(200);
    expect(me.body.parties.map((p: { surveyId: string }) => p.surveyId)).toEqual([surveys.own]);
    // Somebody who is staff and party: the party's key is no staff's.
    const { name, email } = firm.principal;
    const party = { role: 'lender', name, email };
    await server.as(firm.surveyor).post(`/v1/surveys/${surveys.own}/parties`).send(party).expect(201);
    const lenders = await keyOf(firm.principal, { firmId: firm.id, role: 'lender', access: 'write' });
    expect(numbers(await lenders.as.get('/v1/surveys').expect(200))).toEqual([surveys.own]);
    await lenders.as.patch(`/v1/surveys/${surveys.own}`).send({ scope: 'x' }).expect(403);
    await lenders.as.get(`/v1/firms/${firm.id}/members`).expect(404);
  });

  it('to read changes nothing; to write does what its role may', async () => {
    const read = await keyOf(firm.surveyor, { firmId: firm.id, role: 'surveyor' });
    const refused = await read.as
      .patch(`/v1/surveys/${surveys.own}`)
      .send({ scope: 'Changed by a program.' })
      .expect(403);
    expect(refused.body.type).toBe('/problems/not-allowed');
    await read.as.post('/v1/vessels').send({ name: 'By a program' }).expect(403);
    const write = await keyOf(firm.surveyor, { firmId: firm.id, role: 'surveyor', access: 'write' });
    await write.as.patch(`/v1/surveys/${surveys.own}`).send({ scope: 'By a program.' }).expect(200);
  });

  it('never touches how its person signs in', async () => {
    const key = await keyOf(firm.surveyor, { firmId: firm.id, role: 'surveyor', access: 'write' });
    await key.as.get('/v1/sessions').expect(403);
    await key.as.delete('/v1/sessions/others').expect(403);
    await key.as.get('/v1/me/sign-in').expect(403);
    await key.as.put('/v1/me/password').send({ password: 'a drier harbour wall' }).expect(403);
    await key.as.post('/v1/me/second-factor').send({}).expect(403);
    await key.as.get('/v1/api-keys').expect(403);
    const more = { name: 'More', firmId: firm.id, role: 'surveyor', access: 'write' };
    await key.as.post('/v1/api-keys').send(more).expect(403);
  });

  it('ends when it is revoked, when it runs out, and with the role', async () => {
    const key = await keyOf(insurer, { firmId: other.id, role: 'insurer' });
    await server.as(firm.surveyor).delete(`/v1/api-keys/${key.id}`).expect(404);
    await server.as(insurer).delete(`/v1/api-keys/${key.id}`).expect(204);
    await server.as(insurer).delete(`/v1/api-keys/${key.id}`).expect(404);
    await key.as.get('/v1/me').expect(401);

    const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
    const short = await keyOf(insurer, { firmId: other.id, role: 'insurer', expiresOn: tomorrow });
    await short.as.get('/v1/me').expect(200);
    const past = { name: 'x', firmId: other.id, role: 'insurer', access: 'read', expiresOn: '2020-01-01' };
    expect(
      (await server.as(insurer).post('/v1/api-keys').send(past).expect(422)).body.errors[0].pointer,
    ).toBe('/expiresOn');

    const lasting = await keyOf(insurer, { firmId: other.id, role: 'insurer' });
    const principal = server.as(other.principal);
    const parties = await principal.get(`/v1/surveys/${surveys.elsewhere}/parties`).expect(200);
    const [party] = parties.body.items;
    await lasting.as.get(`/v1/surveys/${surveys.elsewhere}`).expect(200);
    await principal.delete(`/v1/surveys/${surveys.elsewhere}/parties/${party.id}`).expect(204);
    await lasting.as.get(`/v1/surveys/${surveys.elsewhere}`).expect(401);
  });

  it('is made only for a role that its person has', async () => {
    const body = { name: 'x', access: 'read' };
    const api = server.as(firm.surveyor);
    for (const wrong of [
      { firmId: firm.id, role: 'principal' },
      { firmId: other.id, role: 'surveyor' },
      { firmId: firm.id, role: 'insurer' },
    ]) {
      await api
        .post('/v1/api-keys')
        .send({ ...body, ...wrong })
        .expect(403);
    }
    await api
      .post('/v1/api-keys')
      .send({ ...body, firmId: firm.id, role: 'harbourmaster' })
      .expect(422);
  });
});
