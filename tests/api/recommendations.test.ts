import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson, type Signed } from '@garboard/seed/builders';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { buildIssuedSurvey, buildRecommendation } from '../support/recommendations.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

// An insurer of boats of two firms, and another insurer; the day is 10 June 2026.
let server: TestServer;
let firms: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor' | 'office'>>>[];
let [cover, other, yard, owner] = [] as unknown as [Signed, Signed, Signed, Signed];
let insurer: Caller;
const surveys: Record<string, { id: string; vesselId: string }> = {};
const made: Record<string, { id: string; clearanceId: string }> = {};
const roles = ['principal', 'surveyor', 'office'] as const;

beforeAll(async () => {
  server = await startServer({ clock: () => new Date('2026-06-10T12:00:00Z') });
  firms = [await buildFirm(server.db, roles), await buildFirm(server.db, roles)];
  const people = [];
  for (const name of ['Cover', 'Other cover', 'Yard', 'Orla'])
    people.push(await buildPerson(server.db, { name }));
  [cover, other, yard, owner] = people as [Signed, Signed, Signed, Signed];
  insurer = server.as(cover);
  const [a, b] = firms as [(typeof firms)[0], (typeof firms)[0]];
  const covered = [{ id: cover.id, role: 'insurer' as const }];
  const survey = async (key: string, firm: typeof a, props: Parameters<typeof buildIssuedSurvey>[2]) => {
    surveys[key] = await buildIssuedSurvey(server, firm, props);
  };
  const owned = { id: owner.id, role: 'owner' as const };
  const yards = { id: yard.id, role: 'yard' as const };
  await survey('heron', a, { boat: 'Heron', number: '2026-0001', parties: [...covered, owned, yards] });
  await survey('plover', b, { boat: 'Plover', number: '2026-0001', parties: covered });
  await survey('dunlin', b, { boat: 'Dunlin', number: '2026-0002', decidedBy: 'surveyor', parties: covered });
  const unreleased = [{ id: cover.id, role: 'insurer' as const, released: false }];
  await survey('knot', a, { boat: 'Knot', number: '2026-0003', parties: unreleased });
  await survey('gull', a, {
    boat: 'Gull',
    number: '2026-0004',
    parties: [{ id: other.id, role: 'insurer' }],
  });
  const finding = async (
    key: string,
    firm: typeof a,
    at: string,
    props: Parameters<typeof buildRecommendation>[3],
  ) => {
    made[key] = await buildRecommendation(server, firm, surveys[at]?.id ?? '', props);
  };
  await finding('hose', a, 'heron', {
    number: 1,
    title: 'Gas hose cracked',
    dueOn: '2026-06-01',
    system: 'gas',
    urgency: 'before-use',
  });
  await finding('wire', a, 'heron', {
    number: 2,
    title: '=HYPERLINK("x")',
    dueOn: '2026-06-17',
    state: 'evidence-sent',
  });
  await finding('seam', a, 'heron', {
    number: 3,
    title: 'Seam open, 100% wet',
    dueOn: '2026-06-18',
    state: 'returned',
  });
  await finding('done', a, 'heron', {
    number: 4,
    title: 'Flare out of date',
    dueOn: '2026-06-02',
    state: 'cleared',
  });
  await finding('draft', a, 'heron', { number: 5, title: 'Not issued', state: 'draft' });
  await finding('pump', b, 'plover', {
    number: 1,
    title: 'Bilge pump silent',
    dueOn: '2026-06-10',
    state: 'evidence-sent',
    sentAt: '2026-05-01T08:00:00Z',
  });
  await finding('rudder', b, 'plover', {
    number: 2,
    title: 'Rudder loose',
    dueOn: null,
    urgency: 'next-layup',
  });
  await finding('anode', b, 'dunlin', {
    number: 1,
    title: 'Anodes wasted',
    dueOn: '2026-06-09',
    state: 'evidence-sent',
  });
  await finding('hidden', a, 'knot', { number: 1, title: 'Hidden', dueOn: '2026-06-01' });
  await finding('foreign', a, 'gull', {
    number: 1,
    title: 'Foreign',
    dueOn: '2026-06-01',
    state: 'evidence-sent',
  });
});
afterAll(() => server.close());

const titles = async (query: string, caller = insurer) => {
  const answer = await caller.get(`/v1/recommendations?${query}`).expect(200);
  return answer.body.items.map((item: { title: string }) => item.title);
};

describe('the list', () => {
  it('has what was issued and released, soonest due first, those without a day last', async () => {
    const answer = await insurer.get('/v1/recommendations?decided=no&total=yes').expect(200);
    expect(answer.body.total).toBe(6);
    expect(answer.body.items.map((i: { title: string }) => i.title)).toEqual([
      ...['Gas hose cracked', 'Anodes wasted', 'Bilge pump silent', '=HYPERLINK("x")', 'Seam open, 100% wet'],
      'Rudder loose',
    ]);
    expect(answer.body.items[0]).toMatchObject({
      ...{ vesselName: 'Heron', firmName: firms[0]?.name, surveyNumber: '2026-0001', number: 1 },
      ...{ overdue: true, dueOn: '2026-06-01', waitingFor: 'owner', evidence: null, mayDecide: false },
    });
    expect(answer.body.items[1]).toMatchObject({ overdue: true, waitingFor: 'surveyor', mayDecide: false });
    expect(answer.body.items[2]).toMatchObject({
      ...{ overdue: false, waitingFor: 'insurer', mayDecide: true },
      evidence: { clearanceId: made.pump?.clearanceId, sentAt: '2026-05-01T08:00:00.000Z', sentBy: 'Orla' },
    });
  });

  it.each([
    ['due=overdue', ['Gas hose cracked', 'Anodes wasted']],
    ['due=this-week', ['Bilge pump silent', '=HYPERLINK("x")']],
    ['due=later', ['Seam open, 100% wet']],
    ['due=none', ['Rudder loose']],
    ['decided=yes', ['Flare out of date']],
    ['state=returned', ['Seam open, 100% wet']],
    ['urgency=before-use', ['Gas hose cracked']],
    ['system=gas', ['Gas hose cracked']],
    ['waitingFor=me', ['Bilge pump silent', '=HYPERLINK("x")']],
    ['waitingFor=surveyor', ['Anodes wasted']],
    ['waitingFor=owner&due=later', ['Seam open, 100% wet']],
    ['waitingFor=me&sort=sent', ['Bilge pump silent', '=HYPERLINK("x")']],
    ['decided=no&sort=urgency&limit=1', ['Gas hose cracked']],
    ['dueFrom=2026-06-09&dueBefore=2026-06-10', ['Anodes wasted']],
    ['q=plover', ['Bilge pump silent', 'Rudder loose']],
    ['q=100%25 wet', ['Seam open, 100% wet']],
    ['q=100_ wet', []],
  ])('narrows by %s', async (query, expected) => {
    expect(await titles(query)).toEqual(expected);
  });

  it('narrows by firm, vessel and survey', async () => {
    expect(await titles(`firmId=${firms[1]?.id}&sort=vessel`)).toEqual([
      ...['Anodes wasted', 'Bilge pump silent', 'Rudder loose'],
    ]);
    expect(await titles(`vesselId=${surveys.dunlin?.vesselId}`)).toEqual(['Anodes wasted']);
    expect(await titles(`surveyId=${surveys.dunlin?.id}`)).toEqual(['Anodes wasted']);
  });

  it.each(['due', 'vessel', 'urgency', 'sent'])(
    'turns its pages without a gap or a double by %s',
    async (sort) => {
      const whole = await titles(`sort=${sort}`);
      const paged: string[] = [];
      let cursor = '';
      do {
        const answer = await insurer
          .get(`/v1/recommendations?sort=${sort}&limit=2&total=yes${cursor}`)
          .expect(200);
        expect(answer.body.total).toBe(7);
        paged.push(...answer.body.items.map((i: { title: string }) => i.title));
        cursor = answer.body.next ? `&cursor=${answer.body.next}` : '';
      } while (cursor);
      expect(paged).toEqual(whole);
      expect(new Set(paged).size).toBe(7);
    },
  );

  it('refuses a cursor of another order', async () => {
    const first = await insurer.get('/v1/recommendations?sort=vessel&limit=1').expect(200);
    const { body } = await insurer.get(`/v1/recommendations?sort=due&cursor=${first.body.next}`).expect(422);
    expect(body.detail).toContain('start again without one');
  });

  it('shows a yard what was given to it and nothing else', async () => {
    expect(await titles('', server.as(yard))).toEqual([]);
    const firmId = firms[0]?.id ?? '';
    const [surveyId, findingId] = [surveys.heron?.id ?? '', made.hose?.id ?? ''];
    await inTransaction(server.db, [firmId], async (tx) => {
      const party = await tx.party.findFirstOrThrow({ where: { surveyId, personId: yard.id } });
      await tx.findingYard.create({
        data: { firmId, surveyId, findingId, partyId: party.id, personId: yard.id },
      });
    });
    expect(await titles('', server.as(yard))).toEqual(['Gas hose cracked']);
  });

  it('shows staff their firm’s, drafts left out', async () => {
    const staff = server.as((firms[0] as (typeof firms)[0]).office);
    expect(await titles('sort=vessel', staff)).toEqual([
      ...[
        'Foreign',
        'Gas hose cracked',
        '=HYPERLINK("x")',
        'Seam open, 100% wet',
        'Flare out of date',
        'Hidden',
      ],
    ]);
  });
});

describe('counts and boats', () => {
  it('counts what the list would show', async () => {
    const { body } = await insurer.get('/v1/recommendations/counts').expect(200);
    expect(body).toEqual({
      ...{ undecided: 6, overdue: 2, dueThisWeek: 2, waitingForMe: 2, decided: 1, vessels: 4, unreleased: 1 },
      waitingFor: { owner: 3, insurer: 2, surveyor: 1 },
      firms: firms.map(({ id, name }) => ({ id, name })),
    });
  });

  it('tells each boat with what is to be done, also one of which nothing was released', async () => {
    const { body } = await insurer.get('/v1/recommendations/vessels').expect(200);
    expect(body.items.map((v: { name: string }) => v.name)).toEqual(['Heron', 'Dunlin', 'Plover', 'Knot']);
    expect(body.items[0]).toEqual({
      ...{ id: surveys.heron?.vesselId, name: 'Heron', firmId: firms[0]?.id, firmName: firms[0]?.name },
      ...{ latestSurveyId: surveys.heron?.id, latestSurveyNumber: '2026-0001', released: true, issued: true },
      ...{ undecided: 3, overdue: 1, dueThisWeek: 1, waitingForMe: 1, decided: 1, nextDueOn: '2026-06-01' },
    });
    expect(body.items[3]).toMatchObject({ released: false, undecided: 0, nextDueOn: null });
    const names = async (query: string) =>
      (await insurer.get(`/v1/recommendations/vessels?${query}`).expect(200)).body.items.map(
        (v: { name: string }) => v.name,
      );
    expect(await names('only=waiting-for-me')).toEqual(['Heron', 'Plover']);
    expect(await names('only=unreleased')).toEqual(['Knot']);
    expect(await names(`firmId=${firms[1]?.id}&sort=vessel`)).toEqual(['Dunlin', 'Plover']);
    expect(await names('q=HER')).toEqual(['Heron']);
    const first = await insurer.get('/v1/recommendations/vessels?limit=3').expect(200);
    expect(await names(`limit=3&cursor=${first.body.next}`)).toEqual(['Knot']);
  });

  it('leaves out what is withheld until it is paid for', async () => {
    const firmId = firms[1]?.id ?? '';
    const hold = (held: boolean) =>
      inTransaction(server.db, [firmId], (tx) =>
        tx.survey.update({ where: { id: surveys.plover?.id ?? '' }, data: { held } }),
      );
    await hold(true);
    expect(await titles('q=plover')).toEqual([]);
    const { body } = await insurer.get('/v1/recommendations/counts').expect(200);
    expect(body).toMatchObject({ undecided: 4, unreleased: 2 });
    await hold(false);
  });
});

describe('CSV', () => {
  it('is the whole list by RFC 4180, with nothing that a spreadsheet would run', async () => {
    const answer = await insurer.get('/v1/recommendations.csv?decided=no').buffer(true).expect(200);
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8; header=present');
    expect(answer.headers['content-disposition']).toContain('filename="recommendations-2026-06-10.csv"');
    expect(answer.text.startsWith('\uFEFFVessel,Survey firm,')).toBe(true);
    expect(answer.text.endsWith('\r\n')).toBe(true);
    // A second program reads it.
    const rows: Record<string, string>[] = parse(answer.text, { bom: true, columns: true });
    expect(rows).toHaveLength(6);
    expect(rows[0]).toMatchObject({ Vessel: 'Heron', 'Due on': '2026-06-01', Overdue: 'Yes' });
    expect(rows[3]?.Recommendation).toBe(`'=HYPERLINK("x")`);
    expect(rows[4]?.Recommendation).toBe('Seam open, 100% wet');
  });

  it('refuses before it begins', async () => {
    await server.as(null).get('/v1/recommendations.csv').expect(401);
    await insurer.get('/v1/recommendations.csv?due=never').expect(422);
  });
});

describe('one decision for many', () => {
  const state = async (key: string) =>
    (await insurer.get(`/v1/findings/${made[key]?.id}`).expect(200)).body.state;
  const fresh: string[] = [];
  beforeEach(async () => {
    fresh.length = 0;
    for (const number of [20, 21, 22]) {
      const props = {
        number: number + fresh.length * 100 + Math.floor(Math.random() * 1e6),
        title: `Clip ${number}`,
      };
      const one = await buildRecommendation(server, firms[0] as (typeof firms)[0], surveys.heron?.id ?? '', {
        ...props,
        state: 'evidence-sent',
      });
      fresh.push(one.clearanceId);
      made[`clip ${number}`] = one;
    }
  });
  const decide = (clearanceIds: (string | undefined)[], caller = insurer, decision = 'accept') =>
    caller.post('/v1/recommendations/decisions').send({ clearanceIds, decision, reason: 'Invoice seen.' });

  it('decides each that it may, and says of the others why not', async () => {
    await decide([fresh[1]], insurer, 'return').expect(200);
    const unknown = newId();
    const { body } = await decide([
      ...fresh,
      ...[made.anode?.clearanceId, made.foreign?.clearanceId, unknown],
    ]).expect(200);
    expect(body.done.map((d: { clearanceId: string }) => d.clearanceId)).toEqual([fresh[0], fresh[2]]);
    const refused = Object.fromEntries(
      body.refused.map((r: { clearanceId: string; type: string; detail: string }) => [r.clearanceId, r]),
    );
    expect(refused[fresh[1] ?? '']).toMatchObject({ type: 'already-decided' });
    expect(refused[fresh[1] ?? ''].detail).toContain('Cover decided “');
    expect(refused[made.anode?.clearanceId ?? '']).toMatchObject({ type: 'not-allowed' });
    expect(refused[made.foreign?.clearanceId ?? '']).toMatchObject({ type: 'not-found' });
    expect(refused[unknown]).toMatchObject({ type: 'not-found' });
    expect([await state('clip 20'), await state('clip 21'), await state('clip 22')]).toEqual([
      ...['cleared', 'returned', 'cleared'],
    ]);
    const events = await insurer.get(`/v1/findings/${made['clip 20']?.id}/events`).expect(200);
    expect(events.body.items[0]).toMatchObject({ kind: 'evidence.accepted', actor: { name: 'Cover' } });
    expect(events.body.items[0].summary).toContain('Invoice seen.');
  });

  it('lets two people do it at once: each piece has one decision, and the loser is told', async () => {
    const firm = firms[0] as (typeof firms)[0];
    const second = await buildPerson(server.db, { name: 'Second desk' });
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.party.create({
        data: {
          ...{ id: newId(), firmId: firm.id, surveyId: surveys.heron?.id ?? '', personId: second.id },
          ...{ role: 'insurer', name: 'Second desk', released: true },
        },
      }),
    );
    const answers = await Promise.all([
      decide(fresh).expect(200),
      decide([...fresh].reverse(), server.as(second)).expect(200),
    ]);
    const done = answers.flatMap((a) => a.body.done);
    const refused = answers.flatMap((a) => a.body.refused);
    expect(done).toHaveLength(3);
    expect(refused.map((r: { type: string }) => r.type)).toEqual(Array(3).fill('already-decided'));
  });

  it('asks for a reason and for at least one', async () => {
    const path = '/v1/recommendations/decisions';
    await insurer.post(path).send({ clearanceIds: fresh, decision: 'accept', reason: ' ' }).expect(422);
    await insurer.post(path).send({ clearanceIds: [], decision: 'accept', reason: 'x' }).expect(422);
    await server
      .as(null)
      .post(path)
      .send({ clearanceIds: fresh, decision: 'accept', reason: 'x' })
      .expect(401);
  });
});
