import type { CatalogueListed } from '@garboard/contract/catalogue';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { buildFirm } from '@garboard/seed/builders';
import { catalogue } from '@garboard/trade/catalogue/catalogue';
import { systems } from '@garboard/trade/vocabulary';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Caller, startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
let surveyor: Caller;
beforeAll(async () => {
  server = await startServer();
  surveyor = server.as((await buildFirm(server.db, ['surveyor'])).surveyor);
});
afterAll(() => server.close());

interface Found {
  items: CatalogueListed[];
  next: string | null;
  readAs: string | null;
}
const ask = async (caller: Caller, query: Record<string, string>): Promise<Found> =>
  (await caller.get(`/v1/catalogue?${new URLSearchParams(query)}`).expect(200)).body;
const find = (query: Record<string, string>) => ask(surveyor, query);
const keysFor = async (q: string) => (await find({ q })).items.map((item) => item.key);

describe('search', () => {
  it('finds an entry first by the words of its title, for nearly every entry', async () => {
    const missed: string[] = [];
    for (const entry of catalogue) {
      const found = await keysFor(entry.title.replace(/[“”]/g, ' '));
      if (!found.slice(0, 3).includes(entry.key)) missed.push(entry.key);
    }
    expect(missed.length / catalogue.length, missed.join(', ')).toBeLessThan(0.02);
  });

  it('finds an entry by what else it is called', async () => {
    const missed: string[] = [];
    for (const entry of catalogue.filter((_, at) => at % 4 === 0)) {
      for (const words of entry.alsoCalled ?? []) {
        const { items } = await find({ q: words, limit: '30' });
        if (!items.some((item) => item.key === entry.key)) missed.push(`${words} (${entry.key})`);
      }
    }
    expect(missed).toEqual([]);
  });

  it.each([
    ['shakle', 'shackle', 'anchor-shackle-moused-wrongly'],
    ['acnhor', 'anchor', 'anchor-shackle-moused-wrongly'],
    ['galvnic isolater', 'galvanic isolator', 'ac-galvanic-isolator'],
    ['extingisher', 'extinguisher', 'fire-extinguisher-nozzle-blocked'],
    ['propellor nut', 'propeller nut', 'propeller-nuts-wrong-order'],
    ['seacok', 'seacock', 'seacock-seized'],
    ['gsa locker', 'gas locker', 'gas-locker-drain-shared'],
    ['exaust elbow', 'exhaust elbow', 'exhaust-elbow-corroded'],
    ['bilge flaot switch', 'bilge float switch', 'bilge-float-switch-poor'],
  ])('forgives “%s” and says that it was read as “%s”', async (q, readAs, key) => {
    const found = await find({ q });
    expect(found.readAs).toBe(readAs);
    expect(found.items.map((item) => item.key)).toContain(key);
  });

  it.each([
    ['zinc', 'corrosion-stern-drive-anodes'],
    ['gasoline', 'fuel-petrol-stored-below'],
    ['propane locker', 'gas-locker-not-vapour-tight'],
    ['aluminum', 'hull-aluminium-poultice'],
    ['lifelines', 'deck-guard-wire-corroded'],
    ['cutlass bearing', 'shaft-bearing-worn'],
    ['osmosis', 'hull-blisters-laminate'],
  ])('knows “%s” by another word', async (q, key) => {
    const found = await find({ q });
    expect(found.readAs).toBeNull();
    expect(found.items.slice(0, 8).map((item) => item.key)).toContain(key);
  });

  it('takes words in any order, unfinished, accented, and common ones for nothing', async () => {
    expect(await keysFor('drain locker gas')).toContain('gas-locker-drain-shared');
    expect(await keysFor('exting')).toContain('fire-extinguisher-nozzle-blocked');
    expect((await keysFor('ánode'))[0]).toMatch(/anode/);
    expect((await find({ q: 'the' })).items).toHaveLength(50);
    expect(await find({ q: 'zzqqxx' })).toEqual({ items: [], next: null, readAs: null });
    for (const q of ["'; DROP TABLE firms; --", '& | ! ( ) :* <->', '\\', '%_', '🛥️', "'a':A"])
      await find({ q });
  });

  it('finds by standard, written together or apart, and no longer number', async () => {
    const citing = (pattern: RegExp) =>
      catalogue.filter((entry) => entry.references.some((r) => pattern.test(r))).map((entry) => entry.key);
    for (const [standard, pattern] of [
      ['ISO 10239', /^ISO 10239/],
      ['iso10239', /^ISO 10239/],
      ['ABYC A-1', /^ABYC A-1$/],
      ['abyc a1', /^ABYC A-1$/],
      ['33 CFR 183', /^33 CFR 183/],
    ] as const) {
      const { items } = await find({ standard, limit: '200' });
      expect(items.map((item) => item.key).sort(), standard).toEqual(citing(pattern).sort());
    }
    expect((await find({ q: 'iso10239' })).items[0]?.system).toBe('gas');
    const both = await find({ q: 'drain', standard: 'ISO 10239', system: 'gas' });
    expect(both.items.map((item) => item.key)).toContain('gas-locker-drain-shared');
    expect((await find({ standard: 'ISO 99999' })).items).toEqual([]);
  });

  it('pages through everything once, by system and by fit', async () => {
    const collect = async (query: Record<string, string>) => {
      const items: CatalogueListed[] = [];
      let cursor: string | null = null;
      do {
        const page: Found = await find({ ...query, ...(cursor ? { cursor } : {}) });
        items.push(...page.items);
        cursor = page.next;
      } while (cursor);
      return items;
    };
    const all = await collect({ limit: '37' });
    expect(all.map((item) => item.key).sort()).toEqual(catalogue.map((entry) => entry.key).sort());
    const places = all.map((item) => systems.indexOf(item.system));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const q of ['corrosion', 'corosion']) {
      const whole = (await find({ q, limit: '200' })).items.map((item) => item.key);
      expect(whole.length).toBeGreaterThan(10);
      expect((await collect({ q, limit: '4' })).map((item) => item.key)).toEqual(whole);
    }
  });
});

describe('5 000 entries of a firm’s own', () => {
  const words = [
    ...new Set(
      catalogue.flatMap(
        (entry) => `${entry.observed} ${entry.consequence}`.toLowerCase().match(/[a-z]{4,}/g) ?? [],
      ),
    ),
  ];
  // Any fixed sequence will do: the same entries and questions each time.
  let seed = 20261125;
  const pick = <T>(list: readonly T[]): T => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return list[seed % list.length] as T;
  };
  const sentence = (count: number) => Array.from({ length: count }, () => pick(words)).join(' ');

  it('are searched as one types, p95 below 100 ms', { timeout: 120_000 }, async () => {
    const firm = await buildFirm(server.db, ['surveyor']);
    const rows = Array.from({ length: 5000 }, (_, at) => {
      const like = pick(catalogue);
      return {
        ...{ id: newId(), firmId: firm.id, key: `own-${at}`, version: 1, savedAt: new Date(), savedBy: 'x' },
        ...{ system: like.system, title: sentence(7), urgency: 'note', harms: [...like.harms] },
        ...{ lookFor: sentence(50), observed: sentence(35), consequence: sentence(30) },
        ...{ recommendation: sentence(40), references: [...like.references], alsoCalled: [sentence(2)] },
        ...{ worksheets: [], cautions: [], related: [] },
      };
    });
    await inTransaction(server.db, [firm.id], async (tx) => {
      for (let at = 0; at < rows.length; at += 500) {
        await tx.firmCatalogueEntry.createMany({ data: rows.slice(at, at + 500) });
      }
    });
    const caller = server.as(firm.surveyor);
    const slip = (word: string) => word.slice(0, 2) + word.slice(3);
    const questions = Array.from({ length: 100 }, (_, at): Record<string, string> => {
      const word = pick(words);
      if (at % 5 === 0) return { q: word.slice(0, 3), limit: '12' };
      if (at % 5 === 1) return { q: `${word} ${pick(words)}`, limit: '12' };
      if (at % 5 === 2) return { q: slip(word), limit: '12' };
      if (at % 5 === 3) return { q: word, system: pick(systems), limit: '12' };
      return { standard: pick(pick(catalogue.filter((e) => e.references.length)).references), limit: '12' };
    });
    // Each question's best of up to three: what else this machine is doing at the moment is not ours to measure.
    const times: number[] = questions.map(() => Number.POSITIVE_INFINITY);
    for (let round = 0; round < 3; round++) {
      for (const [at, question] of questions.entries()) {
        if ((times[at] ?? 0) < 50) continue;
        const began = performance.now();
        await ask(caller, question);
        times[at] = Math.min(times[at] ?? 0, performance.now() - began);
      }
    }
    const p95 = (list: number[]) => [...list].sort((a, b) => a - b)[Math.floor(list.length * 0.95)] ?? 0;
    const of = (kind: number) => p95(times.filter((_, at) => at % 5 === kind)).toFixed(1);
    const said = ['begun', 'two words', 'misspelt', 'in a system', 'standard'].map(
      (kind, at) => `${kind} ${of(at)}`,
    );
    console.log(`p95 of ${p95(times).toFixed(1)} ms over HTTP (${said.join(', ')})`);
    // Alone on the machine it is under 50; other test files run beside this one.
    expect(p95(times)).toBeLessThan(100);
  });
});
