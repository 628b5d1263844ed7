import type { CatalogueEntry, CatalogueVersion } from '@garboard/contract/catalogue';
import { inTransaction } from '@garboard/db/database';
import { buildFirm, buildPerson } from '@garboard/seed/builders';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { diagrams } from '@garboard/trade/catalogue/diagrams';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

type Staff = Awaited<ReturnType<typeof buildFirm<'principal' | 'surveyor' | 'office'>>>;
let server: TestServer;
let firm: Staff;
let surveyor: Caller;
let office: Caller;
let rival: Caller;

const drawn = catalogue.find((entry) => entry.diagram && entry.related.length > 0 && entry.system !== 'gas');
const other = catalogue.find((entry) => entry.key !== drawn?.key && !entry.diagram);
if (!drawn || !other) throw new Error('The catalogue has no entry to test with.');
const ourKey = drawn.key;

beforeAll(async () => {
  server = await startServer();
  firm = await buildFirm(server.db, ['principal', 'surveyor', 'office']);
  [surveyor, office] = [server.as(firm.surveyor), server.as(firm.office)];
  rival = server.as((await buildFirm(server.db, ['surveyor'])).surveyor);
});
afterAll(() => server.close());

const wording = {
  system: 'hull',
  title: 'Rubbing band parted from the hull',
  observed: 'The rubbing band has parted {extent}, {berth}.',
  recommendation: 'Rebed it.',
  urgency: 'next-layup',
  harms: ['deterioration'],
};
const address = (key: string, rest = '') => `/v1/catalogue/${key}${rest}`;
const save = (key: string, body: object = wording) => surveyor.put(address(key)).send(body);
const pointers = (answer: { body: { errors: { pointer: string }[] } }) =>
  answer.body.errors.map((error) => error.pointer);

describe('an entry of ours', () => {
  it('is read whole, with titles of what it refers to, its drawing and its slots', async () => {
    for (const entry of catalogue) {
      const { body, headers } = await office.get(address(entry.key)).expect(200);
      const { worksheets, related, diagram, ...words } = entry;
      expect(body).toMatchObject({ ...words, origin: 'garboard', version: 1, may: { edit: false } });
      expect(headers.etag).toBe('"1"');
      expect(body.worksheets.map((w: { kind: string }) => w.kind)).toEqual(worksheets);
      expect(body.related.map((r: { key: string }) => r.key)).toEqual(related);
      expect(body.related.every((r: { title: string }) => r.title.length > 0)).toBe(true);
      expect(body.diagram?.svg ?? null).toBe(diagram ? diagrams[diagram]?.svg : null);
      for (const slot of body.slots) expect(slot.label.length * slot.example.length).toBeGreaterThan(0);
    }
  });

  it('is 404 under a key that nobody has, however odd', async () => {
    for (const key of [
      'no-such-defect',
      'X',
      'a'.repeat(95),
      '%00-a',
      'gas%20locker',
      encodeURIComponent('מפתח'),
    ]) {
      await surveyor.get(address(key)).expect(404);
      await surveyor.get(address(key, '/versions')).expect(404);
      await surveyor.delete(address(key)).expect(404);
    }
    await server.as(null).get(address(ourKey)).expect(401);
  });

  it('can’t be taken back: there is nothing of the firm’s', async () => {
    const refused = await surveyor.delete(address(ourKey)).expect(409);
    expect(refused.body.detail).toContain('Garboard’s own words');
  });
});

describe('the firm’s words over ours', () => {
  it('hide ours from the firm only, keep our drawing, and every save is a version', async () => {
    const ours: CatalogueEntry = (await surveyor.get(address(ourKey)).expect(200)).body;
    const body = {
      ...wording,
      system: ours.system,
      title: 'As we say it here',
      related: [other.key],
      cautions: ['Mind the step.'],
    };
    const first = await save(ourKey, body).set('if-match', '"1"').expect(200);
    expect(first.headers.etag).toBe('"2"');
    expect(first.body).toMatchObject({
      title: body.title,
      origin: 'firm-wording',
      version: 2,
      may: { edit: true },
    });
    expect(first.body.diagram).toEqual(ours.diagram);
    expect(first.body.related).toEqual([{ key: other.key, title: other.title }]);
    expect(first.body.slots).toEqual([
      { key: 'extent', label: 'How much', example: 'over about 0.4 m²' },
      { key: 'berth', label: 'Berth', example: '' },
    ]);
    expect((await rival.get(address(ourKey)).expect(200)).body).toEqual(ours);

    const stale = await save(ourKey, body).set('if-match', '"1"').expect(412);
    expect(stale.body.type).toBe('/problems/stale-version');
    const second = await save(ourKey, { ...body, title: 'Better said' })
      .set('if-match', '"2"')
      .expect(200);
    expect(second.body.version).toBe(3);

    const list = async (caller: Caller) =>
      (await caller.get(`/v1/catalogue?limit=200&system=${ours.system}`).expect(200)).body.items.filter(
        (item: { key: string }) => item.key === ourKey,
      );
    expect(await list(surveyor)).toMatchObject([
      { title: 'Better said', origin: 'firm-wording', hasDiagram: true },
    ]);
    expect(await list(rival)).toMatchObject([{ title: ours.title, origin: 'garboard', hasDiagram: true }]);
    // Ours is hidden: its own words no longer find it.
    const found = await surveyor.get(`/v1/catalogue?q=${encodeURIComponent(ours.title)}`).expect(200);
    expect(
      found.body.items.filter(
        (i: { origin: string; key: string }) => i.key === ourKey && i.origin === 'garboard',
      ),
    ).toEqual([]);
  });

  it('are listed with ours by version, newest first, page by page', async () => {
    const versions: CatalogueVersion[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const page: { body: { items: CatalogueVersion[]; next: string | null } } = await office
        .get(address(ourKey, `/versions?limit=1${cursor && `&cursor=${cursor}`}`))
        .expect(200);
      versions.push(...page.body.items);
      cursor = page.body.next;
    }
    expect(
      versions.map(({ version, origin, current, title, savedBy }) => [
        version,
        origin,
        current,
        title,
        savedBy,
      ]),
    ).toEqual([
      [3, 'firm-wording', true, 'Better said', firm.surveyor.name],
      [2, 'firm-wording', false, 'As we say it here', firm.surveyor.name],
      [1, 'garboard', false, drawn.title, 'Garboard'],
    ]);
  });

  it('are taken back: ours are read again, the versions stay, the next one has a new number', async () => {
    await surveyor.delete(address(ourKey)).set('if-match', '"2"').expect(412);
    await surveyor.delete(address(ourKey)).set('if-match', '"3"').expect(204);
    const back = await surveyor.get(address(ourKey)).expect(200);
    expect(back.body).toMatchObject({ origin: 'garboard', version: 1, title: drawn.title });
    const { body } = await surveyor.get(address(ourKey, '/versions')).expect(200);
    expect(body.items[0]).toMatchObject({ version: 3, current: false, retiredBy: firm.surveyor.name });
    expect(body.items.at(-1)).toMatchObject({ version: 1, current: true, retiredAt: null });
    const again = await save(ourKey, { ...wording, title: 'Once more' }).expect(200);
    expect(again.body.version).toBe(4);
    await surveyor.delete(address(ourKey)).expect(204);
  });
});

describe('an entry of the firm’s own', () => {
  const key = 'hull-rubbing-band-parted';
  it('is made, found, changed and retired; nobody else sees it', async () => {
    const made = await save(key).expect(200);
    expect(made.body).toMatchObject({
      key,
      origin: 'firm',
      version: 1,
      diagram: null,
      lookFor: '',
      withinDays: null,
    });
    const find = async (caller: Caller) =>
      (await caller.get('/v1/catalogue?q=rubing band parted').expect(200)).body.items.map(
        (i: { key: string }) => i.key,
      );
    expect((await find(office))[0]).toBe(key);
    expect(await find(rival)).not.toContain(key);
    await rival.get(address(key)).expect(404);
    await rival.delete(address(key)).expect(404);
    await rival.get(address(key, '/versions')).expect(404);
    // Under the same key another firm makes its own.
    const theirs = await rival
      .put(address(key))
      .send({ ...wording, title: 'Theirs' })
      .expect(200);
    expect(theirs.body).toMatchObject({ title: 'Theirs', version: 1 });
    expect((await office.get(address(key)).expect(200)).body.title).toBe(wording.title);
    await surveyor.delete(address(key)).expect(204);
    await office.get(address(key)).expect(404);
    expect(await find(office)).not.toContain(key);
    expect((await office.get(address(key, '/versions')).expect(200)).body.items).toHaveLength(1);
    expect((await save(key).expect(200)).body.version).toBe(2);
  });

  it('keeps long and right-to-left texts as they were written', async () => {
    const hebrew = 'ברז הים תפוס ואינו נסגר. '.repeat(400).trim();
    const body = {
      ...wording,
      title: 'ברז ים תפוס',
      observed: hebrew,
      consequence: 'x'.repeat(10_000),
      lookFor: '',
    };
    const made = await save('hull-rtl-case', body).expect(200);
    expect(made.body).toMatchObject(body);
    const found = await surveyor.get(`/v1/catalogue?q=${encodeURIComponent('ברז תפוס')}`).expect(200);
    expect(found.body.items.map((i: { key: string }) => i.key)).toEqual(['hull-rtl-case']);
    await save('hull-rtl-case', { ...body, consequence: 'x'.repeat(40_001) }).expect(422);
  });

  it('saved by two at once from one version is refused to one of them', async () => {
    await save('hull-two-at-once').expect(200);
    const both = await Promise.all(
      ['One', 'Two'].map((title) => save('hull-two-at-once', { ...wording, title }).set('if-match', '"1"')),
    );
    expect(both.map((answer) => answer.status).sort()).toEqual([200, 412]);
    // Also when there was nothing before: the second is a version of its own.
    const fresh = await Promise.all(
      ['One', 'Two'].map((title) => save('hull-both-new', { ...wording, title })),
    );
    expect(fresh.map((answer) => answer.body.version).sort()).toEqual([1, 2]);
  });
});

describe('refusals', () => {
  it('point at each field with a sentence', async () => {
    const cases: [object, string][] = [
      [{ title: '' }, '/title'],
      [{ system: 'rigging' }, '/system'],
      [{ harms: [] }, '/harms'],
      [{ urgency: 'within-days' }, '/withinDays'],
      [{ withinDays: 30 }, '/withinDays'],
      [{ worksheets: ['gas-leak-down', 'tea-leaves'] }, '/worksheets/1'],
      [{ related: [ourKey, 'no-such-defect'] }, '/related/1'],
      [{ related: ['hull-refused'] }, '/related/0'],
      [{ system: 'gas' }, '/cautions'],
      [{ observed: 'a\u0000b' }, '/observed'],
      [{ colour: 'blue' }, '/'],
    ];
    for (const [change, pointer] of cases) {
      const refused = await save('hull-refused', { ...wording, ...change }).expect(422);
      expect(pointers(refused)).toEqual([pointer]);
    }
    expect(pointers(await save('Hull', wording).expect(422))).toEqual(['/key']);
    await surveyor.get(address('hull-refused')).expect(404);
    for (const query of ['system=x', 'cursor=abc', `q=${'a'.repeat(201)}`, 'limit=0']) {
      await surveyor.get(`/v1/catalogue?${query}`).expect(422);
    }
  });

  it('office reads and does not write; parties and strangers have no catalogue', async () => {
    await office.put(address('hull-office')).send(wording).expect(403);
    await office.delete(address(ourKey)).expect(403);
    const nobody = server.as(await buildPerson(server.db));
    await nobody.get('/v1/catalogue').expect(403);
    await nobody.get(address(ourKey)).expect(404);
    await nobody.put(address('hull-office')).send(wording).expect(404);
  });

  it('who works for two firms says for which', async () => {
    const second = await buildFirm(server.db, ['principal']);
    await inTransaction(server.db, [second.id], (tx) =>
      tx.firmMember.create({
        data: { id: firm.principal.id, firmId: second.id, personId: firm.principal.id, role: 'surveyor' },
      }),
    );
    const both = server.as(firm.principal);
    expect(pointers(await both.get('/v1/catalogue').expect(422))).toEqual(['/firmId']);
    const theirs = `?firmId=${second.id}`;
    await both.put(address('hull-of-the-second', theirs)).send(wording).expect(200);
    await both.get(address('hull-of-the-second', theirs)).expect(200);
    await both.get(address('hull-of-the-second', `?firmId=${firm.id}`)).expect(404);
    await surveyor.get(`/v1/catalogue${theirs}`).expect(403);
  });
});
