import type { Worksheet } from '@garboard/contract/worksheets';
import { inTransaction, Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm } from '@garboard/seed/builders';
import { evaluate } from '@garboard/trade/worksheets/core/evaluate';
import { findWorksheet, worksheets } from '@garboard/trade/worksheets/registry';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let firm: Awaited<ReturnType<typeof buildFirm<'surveyor' | 'office'>>>;
let surveyor: Caller;
let surveyId: string;
let path: string;
let findingId: string;

const finding = {
  system: 'gas',
  title: 'Pressure lost in the low-pressure line',
  urgency: 'before-use',
  observed: 'Seen.',
  recommendation: 'Mend.',
};

async function newSurvey(): Promise<string> {
  const vessel = await surveyor.post('/v1/vessels').send({ name: 'Tansy Rook' }).expect(201);
  const body = { vesselId: vessel.body.id, purpose: 'condition' };
  return (await surveyor.post('/v1/surveys').send(body).expect(201)).body.id;
}

beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['surveyor', 'office']);
  surveyor = server.as(firm.surveyor);
  surveyId = await newSurvey();
  path = `/v1/surveys/${surveyId}`;
  findingId = (await surveyor.post(`${path}/findings`).send(finding).expect(201)).body.id;
});
afterAll(() => server.close());

const kind = 'gas-leak-down';
const tight = {
  ...{ startPressure: 250, endPressure: 250, holdTime: 5, gaugeResolution: 1, noLiquid: true },
  ...{ startTemperature: 20, endTemperature: 20 },
};
const leaking = { ...tight, endPressure: { value: 22, unit: 'kPa' } };

const keep = async (body: object = {}): Promise<Worksheet> =>
  (
    await surveyor
      .post(`${path}/worksheets`)
      .send({ kind, inputs: tight, ...body })
      .expect(201)
  ).body;

type Pointed = { body: { errors: { pointer: string; detail: string }[] } };
const pointers = (answer: Pointed) => answer.body.errors.map((e) => e.pointer);

describe('kinds of worksheet', () => {
  it('are listed in the order they are offered, each with a schema a form can be made from', async () => {
    const list = await surveyor.get('/v1/worksheet-kinds').expect(200);
    expect(list.body.next).toBeNull();
    expect(list.body.items.map((k: { kind: string }) => k.kind)).toEqual(worksheets.map((w) => w.kind));
    for (const item of list.body.items) {
      const { body } = await surveyor.get(`/v1/worksheet-kinds/${item.kind}`).expect(200);
      expect(body).toMatchObject(item);
      expect(Object.keys(body.inputs.properties).length).toBeGreaterThan(0);
      for (const field of Object.values<Record<string, unknown>>(body.inputs.properties)) {
        expect(field).toMatchObject({ title: expect.any(String), 'x-field': expect.any(String) });
      }
      expect(body.cautions.length * body.sources.length).toBeGreaterThan(0);
    }
    const gas = await surveyor.get(`/v1/worksheet-kinds/${kind}`).expect(200);
    expect(gas.body.inputs.properties.startPressure).toMatchObject({ 'x-unit': 'mbar', 'x-above': 0 });
    expect(gas.body.inputs.required).toContain('gaugeResolution');
    await surveyor.get('/v1/worksheet-kinds/tea-leaves').expect(404);
    await server.as(null).get('/v1/worksheet-kinds').expect(401);
  });

  it('are worked without keeping anything, with the very result of the computation', async () => {
    const answer = await surveyor
      .post(`/v1/worksheet-kinds/${kind}/evaluate`)
      .send({ inputs: leaking })
      .expect(200);
    const worksheet = findWorksheet(kind);
    if (!worksheet) throw new Error('not registered');
    expect(answer.body).toEqual(JSON.parse(JSON.stringify(evaluate(worksheet, leaking))));
    expect(answer.body.verdict).toBe('unsatisfactory');
    expect((await surveyor.get(`${path}/worksheets`).expect(200)).body.items).toEqual([]);
    await surveyor.post('/v1/worksheet-kinds/tea-leaves/evaluate').send({ inputs: {} }).expect(404);
  });

  it('refuse inputs with a pointer to each field and a sentence', async () => {
    const evaluatePath = `/v1/worksheet-kinds/${kind}/evaluate`;
    const inputs = {
      ...tight,
      startPressure: { value: -3, unit: 'psi' },
      holdTime: 'long',
      colour: 'blue',
      readings: [{ time: 1, pressure: 250 }, { time: 2 }],
    };
    const bad = await surveyor.post(evaluatePath).send({ inputs }).expect(422);
    expect(bad.body.type).toBe('/problems/invalid-input');
    expect(pointers(bad).sort()).toEqual([
      '/inputs/colour',
      '/inputs/holdTime',
      '/inputs/readings/1/pressure',
      '/inputs/startPressure',
    ]);
    expect(bad.body.detail).toContain('Pressure at the start must be more than 0 mbar');
    // A contradiction that only the worksheet knows.
    const half = await surveyor
      .post(evaluatePath)
      .send({ inputs: { ...tight, endTemperature: undefined } })
      .expect(422);
    expect(pointers(half)).toEqual(['/inputs/endTemperature']);
    for (const body of [{}, { inputs: [] }, { inputs: 'x' }, { inputs: null }]) {
      expect(pointers(await surveyor.post(evaluatePath).send(body).expect(422))).toEqual(['/inputs']);
    }
    const many = { ...tight, readings: Array.from({ length: 150 }, () => ({ time: 1 })) };
    const cut = await surveyor.post(evaluatePath).send({ inputs: many }).expect(422);
    expect(cut.body.errors).toHaveLength(50);
    expect(cut.body.detail).toMatch(/And 145 more\.$/);
  });
});

describe('worksheets of a survey', () => {
  it('are kept, read, listed by page and by finding, and named by their finding', async () => {
    const alone = await keep({ title: 'Galley line', printed: false });
    const attached = await keep({ findingId, inputs: leaking });
    expect(alone).toMatchObject({
      ...{ surveyId, findingId: null, kind, title: 'Galley line', inputs: tight, worksheetVersion: 1 },
      ...{ printed: false, issued: false, newer: null, may: { edit: true }, version: 1 },
    });
    expect(alone.result.verdict).toBe('satisfactory');
    expect(attached).toMatchObject({ title: attached.result.title, printed: true, findingId });

    const read = await surveyor.get(`/v1/worksheets/${attached.id}`).expect(200);
    expect(read.headers.etag).toBe('"1"');
    expect(read.body).toEqual(attached);
    // People read outputs in their order: the database must not sort them.
    expect(Object.keys(read.body.result.outputs)).toEqual(
      Object.keys(evaluate(worksheets[0] as never, leaking).outputs),
    );

    const first = await surveyor.get(`${path}/worksheets?limit=1`).expect(200);
    expect(first.body.items.map((w: Worksheet) => w.id)).toEqual([alone.id]);
    expect(first.headers.link).toContain('rel="next"');
    const rest = await surveyor.get(`${path}/worksheets?cursor=${first.body.next}`).expect(200);
    expect(rest.body.items.map((w: Worksheet) => w.id)).toEqual([attached.id]);
    const { verdict, reasons, outputs } = attached.result;
    expect(rest.body.items[0]).toMatchObject({ verdict, reasons, outputs, system: 'gas', outdated: false });
    expect(Object.keys(rest.body.items[0].outputs)).toEqual(Object.keys(outputs));
    expect(rest.body.items[0]).not.toHaveProperty('result');

    const ofFinding = await surveyor.get(`${path}/worksheets?findingId=${findingId}`).expect(200);
    expect(ofFinding.body.items.map((w: Worksheet) => w.id)).toEqual([attached.id]);
    const named = [{ id: attached.id, kind, title: attached.title, verdict: 'unsatisfactory' }];
    expect((await surveyor.get(`/v1/findings/${findingId}`)).body.worksheets).toEqual(named);
    expect((await surveyor.get(`${path}/findings`)).body.items[0].worksheets).toEqual(named);

    const events = (await surveyor.get(`${path}/events`)).body.items;
    expect(events[0]).toMatchObject({
      ...{ kind: 'worksheet.created', findingId, actor: { role: 'surveyor' } },
      summary: `Worksheet kept: ${attached.title}`,
    });
  });

  it('are kept once under one Idempotency-Key', async () => {
    const post = (body: object) =>
      surveyor.post(`${path}/worksheets`).set('idempotency-key', 'gas-once').send(body);
    const body = { kind, inputs: tight };
    const [first, again] = [await post(body).expect(201), await post(body).expect(201)];
    expect(again.body).toEqual(first.body);
    expect(JSON.stringify(again.body)).toBe(JSON.stringify(first.body));
    expect(again.headers['idempotency-replayed']).toBe('true');
    await post({ ...body, title: 'Other' }).expect(422);
  });

  it('are refused with another survey’s finding, an unknown kind, bad inputs or by the office', async () => {
    const other = await newSurvey();
    const foreign = await surveyor.post(`/v1/surveys/${other}/findings`).send(finding).expect(201);
    const post = (body: object) => surveyor.post(`${path}/worksheets`).send({ kind, inputs: tight, ...body });
    expect(pointers(await post({ findingId: foreign.body.id }).expect(422))).toEqual(['/findingId']);
    expect(pointers(await post({ kind: 'tea-leaves' }).expect(422))).toEqual(['/kind']);
    expect(pointers(await post({ inputs: { ...tight, holdTime: 0 } }).expect(422))).toEqual([
      '/inputs/holdTime',
    ]);
    expect(pointers(await post({ title: '' }).expect(422))).toEqual(['/title']);
    const office = server.as(firm.office);
    const made = await keep();
    const refused = await office.post(`${path}/worksheets`).send({ kind, inputs: tight }).expect(403);
    expect(refused.body.detail).toContain('worksheets');
    await office.patch(`/v1/worksheets/${made.id}`).send({ title: 'x' }).expect(403);
    await office.delete(`/v1/worksheets/${made.id}`).expect(403);
    expect((await office.get(`/v1/worksheets/${made.id}`).expect(200)).body.may).toEqual({ edit: false });
    const move = { findingId: foreign.body.id };
    expect(pointers(await surveyor.patch(`/v1/worksheets/${made.id}`).send(move).expect(422))).toEqual([
      '/findingId',
    ]);
  });

  it('are edited at the version seen; only new inputs are worked again', async () => {
    const made = await keep();
    const at = `/v1/worksheets/${made.id}`;
    const renamed = await surveyor
      .patch(at)
      .set('if-match', '"1"')
      .send({ title: 'Heater line', findingId, printed: false })
      .expect(200);
    expect(renamed.headers.etag).toBe('"2"');
    expect(renamed.body).toMatchObject({ title: 'Heater line', findingId, printed: false });
    expect(renamed.body.result).toEqual(made.result);
    await surveyor.patch(at).set('if-match', '"1"').send({ title: 'Late' }).expect(412);
    const again = await surveyor.patch(at).send({ inputs: leaking, findingId: null }).expect(200);
    expect(again.body).toMatchObject({ inputs: leaking, findingId: null, title: 'Heater line', version: 3 });
    expect(again.body.result.verdict).toBe('unsatisfactory');
    expect(pointers(await surveyor.patch(at).send({ inputs: {} }).expect(422))).toContain(
      '/inputs/startPressure',
    );
    expect((await surveyor.get(at)).body).toEqual(again.body);
  });

  it('are deleted as drafts; a deleted finding lets go of them', async () => {
    const passing = await surveyor.post(`${path}/findings`).send(finding).expect(201);
    const made = await keep({ findingId: passing.body.id });
    await surveyor.delete(`/v1/findings/${passing.body.id}`).expect(204);
    expect((await surveyor.get(`/v1/worksheets/${made.id}`).expect(200)).body.findingId).toBeNull();
    await surveyor.delete(`/v1/worksheets/${made.id}`).expect(204);
    await surveyor.get(`/v1/worksheets/${made.id}`).expect(404);
    await surveyor.delete(`/v1/worksheets/${made.id}`).expect(404);
    const events = await surveyor.get(`${path}/events`).expect(200);
    expect(events.body.items[0]).toMatchObject({ kind: 'worksheet.deleted' });
  });

  it('can’t change while the survey is closed to changes', async () => {
    const closed = await newSurvey();
    const body = { kind, inputs: tight };
    const made = await surveyor.post(`/v1/surveys/${closed}/worksheets`).send(body).expect(201);
    await surveyor.patch(`/v1/surveys/${closed}`).send({ state: 'cancelled' }).expect(200);
    const refused = await surveyor.post(`/v1/surveys/${closed}/worksheets`).send(body).expect(409);
    expect(refused.body.detail).toContain('Reopen');
    await surveyor.patch(`/v1/worksheets/${made.body.id}`).send({ title: 'x' }).expect(409);
    await surveyor.delete(`/v1/worksheets/${made.body.id}`).expect(409);
    expect((await surveyor.get(`/v1/worksheets/${made.body.id}`)).body.may).toEqual({ edit: false });
  });
});

describe('a worksheet kept with an older version', () => {
  /** As if the computation had since been changed: what was kept came from the version before. */
  async function keptBefore(
    change: (result: Worksheet['result']) => Worksheet['result'],
    inputs: object = tight,
  ) {
    const made = await keep({ inputs });
    const result = change({ ...made.result, version: 0 });
    const { verdict } = result;
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.worksheet.update({ where: { id: made.id }, data: { kindVersion: 0, result, verdict } }),
    );
    return `/v1/worksheets/${made.id}`;
  }

  it('keeps its result and says whether the newer version would differ', async () => {
    const same = await surveyor.get(await keptBefore((r) => ({ ...r, reasons: ['Worded otherwise.'] })));
    expect(same.body).toMatchObject({ worksheetVersion: 0, result: { reasons: ['Worded otherwise.'] } });
    expect(same.body.newer).toMatchObject({ version: 1, verdict: 'satisfactory', differs: false });

    const at = await keptBefore((r) => ({ ...r, verdict: 'attention' }));
    const other = await surveyor.get(at);
    expect(other.body.result.verdict).toBe('attention');
    expect(other.body.newer).toMatchObject({ version: 1, verdict: 'satisfactory', differs: true });
    const listed = (await surveyor.get(`${path}/worksheets?limit=200`)).body.items;
    expect(listed.find((w: Worksheet) => w.id === other.body.id)).toMatchObject({
      ...{ outdated: true, verdict: 'attention', worksheetVersion: 0 },
    });

    // Other edits leave it alone, new inputs bring it up to date.
    const renamed = await surveyor.patch(at).send({ title: 'Old line' }).expect(200);
    expect(renamed.body).toMatchObject({ worksheetVersion: 0, result: { verdict: 'attention' } });
    const worked = await surveyor.patch(at).send({ inputs: tight }).expect(200);
    expect(worked.body).toMatchObject({
      worksheetVersion: 1,
      newer: null,
      result: { verdict: 'satisfactory' },
    });
  });

  it('says that an output changed, and that the newer version refuses its inputs', async () => {
    const changed = await surveyor.get(
      await keptBefore((r) => ({
        ...r,
        outputs: Object.fromEntries(
          Object.entries(r.outputs).map(([key, o]) => [
            key,
            typeof o.value === 'number' ? { ...o, value: o.value + 1 } : o,
          ]),
        ),
      })),
    );
    expect(changed.body.newer).toMatchObject({ verdict: 'satisfactory', differs: true });
    const at = await keptBefore((r) => r);
    await inTransaction(server.db, [firm.id], (tx) =>
      tx.worksheet.update({
        where: { id: at.split('/').at(-1) ?? '' },
        data: { inputs: { gauge: 'brass' } },
      }),
    );
    const refused = (await surveyor.get(at).expect(200)).body;
    expect(refused.newer).toMatchObject({ version: 1, verdict: 'indeterminate', differs: true });
    expect(refused.newer.reasons.join(' ')).toContain('gauge');
  });

  it('stays readable when its kind is no longer offered, and can’t be worked again', async () => {
    const made = await keep();
    const id = newId();
    await inTransaction(server.db, [firm.id], async (tx) => {
      const { issued: _, ...row } = await tx.worksheet.findUniqueOrThrow({ where: { id: made.id } });
      const { inputs, result } = row as { inputs: Prisma.InputJsonObject; result: Prisma.InputJsonObject };
      const data = { ...row, id, kind: 'litmus', inputs, result, issued: Prisma.DbNull };
      await tx.worksheet.create({ data });
    });
    const read = await surveyor.get(`/v1/worksheets/${id}`).expect(200);
    expect(read.body).toMatchObject({ kind: 'litmus', newer: null });
    const refused = await surveyor.patch(`/v1/worksheets/${id}`).send({ inputs: tight }).expect(409);
    expect(refused.body.detail).toContain('no longer offered');
  });
});

describe('a large moisture map', () => {
  it('of 10 000 readings is taken as grid and as points, kept and read', async () => {
    const readings = Array.from({ length: 100 }, (_, y) =>
      Array.from(
        { length: 100 },
        (_, x) => 9 + ((x * 7 + y * 13) % 4) + (x > 40 && x < 50 && y > 20 && y < 30 ? 15 : 0),
      ),
    );
    const inputs = { readings, spacingAlong: 0.1 };
    const kept = await surveyor.post(`${path}/worksheets`).send({ kind: 'moisture-map', inputs }).expect(201);
    expect(kept.body.result.drawings[0].svg).toContain('<svg');
    const read = await surveyor.get(`/v1/worksheets/${kept.body.id}`).expect(200);
    expect(read.body).toEqual(kept.body);
    const points = readings.flatMap((row, y) =>
      row.map((reading, x) => ({
        forward: { value: x * 100, unit: 'mm' },
        toPort: { value: y * 100 - 5000, unit: 'mm' },
        reading,
      })),
    );
    const answer = await surveyor
      .post('/v1/worksheet-kinds/moisture-map/evaluate')
      .send({ inputs: { points } })
      .expect(200);
    expect(answer.body.verdict).toBe(kept.body.result.verdict);
  });
});
