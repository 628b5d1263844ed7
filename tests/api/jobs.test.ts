import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildIssuedSurvey, buildRecommendation } from '../support/recommendations.ts';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

// A firm with a job at each stage; the day is 10 June 2026.
let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor' | 'office'>>>;
let office: Caller;
const jobs: Record<string, string> = {};

beforeAll(async () => {
  server = await startServer({ clock: () => new Date('2026-06-10T12:00:00Z') });
  firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  const other = await buildFirm(server.db, ['surveyor']);
  await buildIssuedSurvey(server, other, { boat: 'Other', number: '2026-0001', state: 'drafting' });
  office = server.as(firm.office);
  let n = 0;
  const job = async (boat: string, state: string, decidedBy: 'insurer' | 'surveyor' = 'insurer') => {
    const number = `2026-00${String(++n).padStart(2, '0')}`;
    const props = { boat, number, state, decidedBy, surveyorId: firm.surveyor.id };
    const { id } = await buildIssuedSurvey(server, firm, props);
    jobs[boat] = id;
    return id;
  };
  const attended = (surveyId: string, ...days: string[]) =>
    inTransaction(server.db, [firm.id], async (tx) => {
      for (const [ordinal, day] of days.entries()) {
        await tx.attendance.create({
          data: {
            ...{ id: newId(), firmId: firm.id, surveyId, ordinal, date: new Date(`${day}T00:00:00Z`) },
            ...{ place: 'Hard 3', condition: 'ashore' },
          },
        });
      }
    });
  await job('Asked', 'enquiry');
  await attended(await job('Booked', 'booked'), '2026-06-01', '2026-06-12', '2026-06-20');
  await attended(await job('Missed', 'booked'), '2026-06-08');
  await job('Undated', 'booked');
  await attended(await job('Seen', 'attended'), '2026-06-09');
  await job('Written', 'drafting');
  await job('Reviewed', 'in-review');
  await job('Settled', 'issued');
  const open = await job('Clearing', 'issued');
  const decided = await job('Deciding', 'issued', 'surveyor');
  await job('Over', 'closed');
  await job('Off', 'cancelled');
  const finding = (surveyId: string, number: number, state: string, dueOn: string) =>
    buildRecommendation(server, firm, surveyId, { number, title: `F${number}`, state, dueOn });
  await finding(open, 1, 'open', '2026-06-09');
  await finding(open, 2, 'returned', '2026-06-10');
  await finding(open, 3, 'evidence-sent', '2026-07-30');
  await finding(open, 4, 'cleared', '2026-01-01');
  await finding(decided, 1, 'evidence-sent', '2026-06-18');
  await inTransaction(server.db, [firm.id], (tx) =>
    tx.review.create({
      data: {
        ...{ id: newId(), firmId: firm.id, surveyId: jobs.Reviewed ?? '', askedById: firm.surveyor.id },
        ...{ askedByName: 'S', askedAt: new Date(), reviewerId: firm.principal.id, reviewerName: 'Ada' },
      },
    }),
  );
});
afterAll(() => server.close());

const boats = async (query: string, caller = office): Promise<string[]> => {
  const answer = await caller.get(`/v1/jobs?${query}`).expect(200);
  return answer.body.items.map((item: { vesselName: string }) => item.vesselName);
};

describe('the list of jobs', () => {
  it('tells where each stands, what comes next and who waits for whom', async () => {
    const { body } = await office.get('/v1/jobs?closed=no&total=yes').expect(200);
    expect(body.total).toBe(10);
    const told = Object.fromEntries(
      body.items.map((j: { vesselName: string; stage: string; next: object; waiting: object[] }) => [
        j.vesselName,
        { stage: j.stage, next: j.next, waiting: j.waiting },
      ]),
    );
    const waits = (who: string, name: string | null = null, count: number | null = null) => ({
      for: who,
      name,
      count,
    });
    const surveyor = firm.surveyor.name;
    const day = (on: string, passed: boolean, what = 'attendance') => ({ what, on, passed });
    expect(told).toEqual({
      Asked: { stage: 'enquiry', next: null, waiting: [waits('office')] },
      Booked: { stage: 'booked', next: day('2026-06-12', false), waiting: [] },
      Missed: { stage: 'booked', next: day('2026-06-08', true), waiting: [waits('surveyor', surveyor)] },
      Undated: { stage: 'booked', next: null, waiting: [waits('office')] },
      Seen: { stage: 'attended', next: null, waiting: [waits('surveyor', surveyor)] },
      Written: { stage: 'drafting', next: null, waiting: [waits('surveyor', surveyor)] },
      Reviewed: { stage: 'in-review', next: null, waiting: [waits('reviewer', 'Ada')] },
      Settled: { stage: 'issued', next: null, waiting: [waits('office')] },
      Clearing: {
        stage: 'in-clearance',
        next: day('2026-06-09', true, 'recommendation'),
        waiting: [waits('owner', null, 2), waits('insurer', null, 1)],
      },
      Deciding: {
        stage: 'in-clearance',
        next: day('2026-06-18', false, 'recommendation'),
        waiting: [waits('surveyor', surveyor, 1)],
      },
    });
    const clearing = body.items.find((j: { vesselName: string }) => j.vesselName === 'Clearing');
    expect(clearing).toMatchObject({ undecided: 3, overdue: 1, surveyorName: surveyor });
  });

  it('has what is due first at the head', async () => {
    expect((await boats('closed=no')).slice(0, 4)).toEqual(['Missed', 'Clearing', 'Booked', 'Deciding']);
  });

  it.each([
    ['stage=in-clearance', ['Clearing', 'Deciding']],
    ['stage=issued', ['Settled']],
    ['closed=yes&sort=newest', ['Off', 'Over']],
    ['due=overdue', ['Missed', 'Clearing']],
    ['due=this-week', ['Booked']],
    ['waitingFor=owner', ['Clearing']],
    ['waitingFor=reviewer', ['Reviewed']],
    ['waitingFor=office&sort=vessel', ['Asked', 'Settled', 'Undated']],
    ['waitingFor=me&sort=vessel', ['Asked', 'Settled', 'Undated']],
    ['q=CLEAR', ['Clearing']],
    ['q=2026-0003', ['Missed']],
    ['purpose=valuation', []],
    ['sort=stage&limit=3', ['Asked', 'Missed', 'Booked']],
  ])('narrows and sorts by %s', async (query, expected) => {
    expect(await boats(query)).toEqual(expected);
  });

  it('knows what waits for a surveyor and for a reviewer', async () => {
    expect(await boats('waitingFor=me&sort=vessel', server.as(firm.surveyor))).toEqual([
      ...['Deciding', 'Missed', 'Seen', 'Written'],
    ]);
    expect(await boats('waitingFor=me&sort=vessel', server.as(firm.principal))).toEqual([
      ...['Asked', 'Reviewed', 'Settled', 'Undated'],
    ]);
  });

  it.each(['due', 'newest', 'vessel', 'stage'])(
    'turns its pages without a gap or a double by %s',
    async (sort) => {
      const whole = await boats(`sort=${sort}`);
      const paged: string[] = [];
      let cursor = '';
      do {
        const answer = await office.get(`/v1/jobs?sort=${sort}&limit=5${cursor}`).expect(200);
        paged.push(...answer.body.items.map((j: { vesselName: string }) => j.vesselName));
        cursor = answer.body.next ? `&cursor=${answer.body.next}` : '';
      } while (cursor);
      expect(paged).toEqual(whole);
      expect(new Set(paged).size).toBe(12);
    },
  );

  it('counts them', async () => {
    const { body } = await office.get('/v1/jobs/counts').expect(200);
    expect(body).toMatchObject({
      ...{ overdue: 2, dueThisWeek: 1, waitingForMe: 3 },
      surveyors: [{ id: firm.surveyor.id, name: firm.surveyor.name }],
      stages: { enquiry: 1, booked: 3, attended: 1, drafting: 1, issued: 1, 'in-clearance': 2, closed: 1 },
    });
  });

  it('is nobody else’s', async () => {
    const stranger = server.as(await buildPerson(server.db));
    expect(await boats('', stranger)).toEqual([]);
    expect((await stranger.get('/v1/jobs/counts').expect(200)).body).toMatchObject({ overdue: 0 });
    await server.as(null).get('/v1/jobs').expect(401);
  });

  it('comes as CSV', async () => {
    const { text } = await office.get('/v1/jobs.csv?stage=in-clearance').buffer(true).expect(200);
    const rows: Record<string, string>[] = parse(text, { bom: true, columns: true });
    expect(rows.map((r) => [r.Vessel, r.Stage, r['Waiting for']])).toEqual([
      ['Clearing', 'In clearance', 'Owner, Insurer'],
      ['Deciding', 'In clearance', firm.surveyor.name],
    ]);
  });
});

describe('saved views', () => {
  const view = { page: 'jobs', name: 'Late ones', query: { due: 'overdue', sort: 'vessel' } };

  it('are each person’s own', async () => {
    const made = await office.post('/v1/saved-views').send(view).expect(201);
    expect(made.body).toMatchObject(view);
    await office.post('/v1/saved-views').send(view).expect(409);
    await office
      .post('/v1/saved-views')
      .send({ ...view, page: 'vessels' })
      .expect(201);
    const names = async (caller: Caller) =>
      (await caller.get('/v1/saved-views?page=jobs').expect(200)).body.items.map(
        (v: { name: string }) => v.name,
      );
    expect(await names(office)).toEqual(['Late ones']);
    const surveyor = server.as(firm.surveyor);
    expect(await names(surveyor)).toEqual([]);
    const path = `/v1/saved-views/${made.body.id}`;
    await surveyor.patch(path).send({ name: 'Mine' }).expect(404);
    await surveyor.delete(path).expect(404);
    await office.patch(path).send({ name: 'Overdue' }).expect(200);
    await office
      .post('/v1/saved-views')
      .send({ ...view, name: 'B' })
      .expect(201);
    const { body } = await office.patch(path).send({ name: 'B' }).expect(409);
    expect(body.detail).toContain('Choose another name');
    await office.delete(path).expect(204);
    expect(await names(office)).toEqual(['B']);
  });

  it('are kept from others by the database too', async () => {
    const sight = { firmIds: [firm.id], personId: firm.surveyor.id };
    await inTransaction(server.db, sight, async (tx) => {
      expect(await tx.savedView.findMany()).toEqual([]);
    });
    await inTransaction(server.db, { ...sight, personId: firm.office.id }, async (tx) => {
      expect(await tx.savedView.count()).toBeGreaterThan(0);
    });
  });

  it.each([
    ['an unknown list', { ...view, page: 'weather' }],
    ['no name', { ...view, name: ' ' }],
    ['a filter that is not one', { ...view, query: { 'a b': 'x' } }],
  ])('refuse %s', async (_, body) => {
    await office.post('/v1/saved-views').send(body).expect(422);
  });
});
