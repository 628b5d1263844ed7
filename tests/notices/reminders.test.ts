import type { Ctx } from '@garboard/core/context';
import { recordEvent } from '@garboard/core/events/record-event';
import { mailTime } from '@garboard/core/notices/mail-time';
import { remindDue } from '@garboard/core/notices/remind-due';
import { remindOverdue } from '@garboard/core/notices/remind-overdue';
import { inTransaction } from '@garboard/db/database';
import { openMailer } from '@garboard/platform/mail';
import { eventSummary } from '@garboard/trade/event-words';
import { type Language, languages } from '@garboard/trade/languages';
import { noticeKinds, wayOf } from '@garboard/trade/notice-kinds';
import { noticeText } from '@garboard/trade/notice-words/words-of';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { mailWorker, toldScene } from './scene.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const postOf = () => mailWorker(server, openMailer({ dataDir: server.dataDir, from: 'G <g@g.example>' }));

const asSystem = <T>(firmId: string, now: Date, work: (ctx: Ctx) => Promise<T>) =>
  inTransaction(server.db, [firmId], (tx) =>
    work({
      actor: { kind: 'system', firmIds: [firmId] },
      ...{ tx, store: server.store, clock: () => now, log: console },
    }),
  );

async function issuedOn(scene: Awaited<ReturnType<typeof toldScene>>, day: string): Promise<void> {
  await inTransaction(server.db, [scene.firm.id], (tx) =>
    tx.survey.update({ where: { id: scene.surveyId }, data: { issuedAt: new Date(day) } }),
  );
}

describe('due dates', () => {
  it('are reminded of 14 and 3 days before, once each, and anew when more time was given', async () => {
    const scene = await toldScene(server);
    await issuedOn(scene, '2026-05-01');
    const owner = await scene.join('owner');
    const yard = await scene.join('yard');
    const findingId = await scene.addFinding('Hose', { dueOn: '2026-07-01' });
    const told = async (day: string) => asSystem(scene.firm.id, new Date(`${day}T09:00:00Z`), remindDue);
    expect(await told('2026-06-16')).toBe(0);
    expect(await told('2026-06-17')).toBe(1);
    expect(await told('2026-06-17')).toBe(0);
    // A worker that slept a day tells with the days that are left.
    expect(await told('2026-06-29')).toBe(1);
    expect(await told('2026-07-01')).toBe(0);
    expect(await told('2026-07-05')).toBe(0);
    await inTransaction(server.db, [scene.firm.id], (tx) =>
      tx.finding.update({
        where: { id: findingId },
        data: { dueOn: new Date('2026-08-01'), dueExtendedAt: new Date('2026-07-05') },
      }),
    );
    expect(await told('2026-07-20')).toBe(1);
    const post = postOf();
    await post.work();
    const sentences = (await server.as(owner).get('/v1/notices').expect(200)).body.items.map(
      (n: { sentence: string }) => n.sentence,
    );
    expect(sentences).toEqual([
      'Finding 1, “Hose” is due on 1 August 2026, in 12 days.',
      'Finding 1, “Hose” is due on 1 July 2026, in 2 days.',
      'Finding 1, “Hose” is due on 1 July 2026, in 14 days.',
    ]);
    expect((await server.as(yard).get('/v1/notices').expect(200)).body.items).toEqual([]);
    await server.as(null).get('/v1/notices').expect(401);
  });

  it('are not reminded of when the finding was issued later than that, or is decided', async () => {
    const scene = await toldScene(server);
    await issuedOn(scene, '2026-06-20');
    await scene.addFinding('Hose', { dueOn: '2026-07-01' });
    await scene.addFinding('Clip', { dueOn: '2026-07-20', state: 'cleared' });
    expect(await asSystem(scene.firm.id, new Date('2026-06-21T09:00:00Z'), remindDue)).toBe(0);
    expect(await asSystem(scene.firm.id, new Date('2026-06-28T09:00:00Z'), remindDue)).toBe(1);
  });

  it('are told to who decides once evidence waits', async () => {
    const scene = await toldScene(server);
    await issuedOn(scene, '2026-05-01');
    const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
    await scene.addFinding('Hose', { dueOn: '2026-07-01', state: 'evidence-sent' });
    await asSystem(scene.firm.id, new Date('2026-06-17T09:00:00Z'), remindDue);
    await postOf().work();
    expect((await server.as(insurer).get('/v1/notices').expect(200)).body.items).toHaveLength(1);
    expect((await server.as(owner).get('/v1/notices').expect(200)).body.items).toHaveLength(0);
  });
});

describe('what is overdue', () => {
  it('is told once a week, to a yard only what it was given', async () => {
    const scene = await toldScene(server);
    const [owner, insurer, yard] = [
      await scene.join('owner'),
      await scene.join('insurer'),
      await scene.join('yard'),
    ];
    const hose = await scene.addFinding('Hose', { dueOn: '2026-05-20' });
    await scene.addFinding('Clip', { dueOn: '2026-06-01' });
    await inTransaction(server.db, [scene.firm.id], (tx) =>
      tx.findingYard.create({
        data: {
          ...{ firmId: scene.firm.id, surveyId: scene.surveyId, findingId: hose },
          ...{ partyId: yard.partyId, personId: yard.id },
        },
      }),
    );
    const told = (at: string) => asSystem(scene.firm.id, new Date(at), remindOverdue);
    // 8 June 2026 is a Monday; in Lisbon it begins at 23:00 UTC of the day before.
    expect(await told('2026-06-07T22:59:00Z')).toBe(0);
    expect(await told('2026-06-07T23:01:00Z')).toBe(1);
    expect(await told('2026-06-08T12:00:00Z')).toBe(0);
    expect(await told('2026-06-10T12:00:00Z')).toBe(0);
    expect(await told('2026-06-16T12:00:00Z')).toBe(1);
    await postOf().work();
    const listOf = async (person: typeof owner) =>
      (await server.as(person).get('/v1/notices').expect(200)).body.items.map(
        (n: { sentence: string }) => n.sentence,
      );
    const both = '2 recommendations are overdue, the oldest since 20 May 2026.';
    expect(await listOf(owner)).toEqual([both, both]);
    expect(await listOf(insurer)).toEqual([both, both]);
    const one = 'Finding 1, “Hose” was due on 20 May 2026 and is still open.';
    expect(await listOf(yard)).toEqual([one, one]);
  });
});

describe('the time of a mail', () => {
  const at = (now: string, way: 'at-once' | 'daily' | 'weekly' | 'portal-only', zone: string) =>
    mailTime(new Date(now), { way, zone, rule: {} })?.toISOString() ?? null;

  it('follows the person’s clock, over the change of clocks too', () => {
    // Berlin goes from +1 to +2 in the night to 29 March 2026.
    expect(at('2026-03-28T12:00:00Z', 'daily', 'Europe/Berlin')).toBe('2026-03-29T05:00:00.000Z');
    expect(at('2026-03-28T04:00:00Z', 'daily', 'Europe/Berlin')).toBe('2026-03-28T06:00:00.000Z');
    expect(at('2026-06-07T23:01:00Z', 'weekly', 'Europe/Lisbon')).toBe('2026-06-08T06:00:00.000Z');
    expect(at('2026-06-07T23:01:00Z', 'weekly', 'America/Lima')).toBe('2026-06-08T12:00:00.000Z');
    expect(at('2026-06-09T12:00:00Z', 'weekly', 'Europe/Lisbon')).toBe('2026-06-09T12:00:00.000Z');
    expect(at('2026-06-09T12:00:00Z', 'portal-only', 'Europe/Lisbon')).toBeNull();
    expect(at('2026-06-09T12:00:00Z', 'at-once', 'Europe/Lisbon')).toBe('2026-06-09T12:01:00.000Z');
    expect(wayOf('overdue', 'at-once')).toBe('weekly');
    expect(wayOf('evidence', 'weekly')).toBe('at-once');
  });
});

describe('an erased person', () => {
  it('is not named in what others were told', async () => {
    const scene = await toldScene(server);
    const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
    await scene.sendEvidence(owner, await scene.addFinding('Hose'));
    await postOf().work();
    const told = async () => (await server.as(insurer).get('/v1/notices').expect(200)).body.items;
    expect((await told())[0].sentence).toContain('The owner sent evidence');
    await asSystem(scene.firm.id, new Date(), async (ctx) => {
      const erasure = await recordEvent(ctx, {
        ...{ firmId: scene.firm.id, kind: 'person.erased', role: 'owner', data: { roles: 'owner' } },
        behalf: { id: owner.id, name: 'Erased person' },
      });
      await ctx.tx
        .$executeRaw`SELECT garboard_erase_from_record(${erasure}::uuid, ${[owner.name]}, 'Erased person')`;
    });
    expect(await told()).toEqual([]);
  });
});

describe('the words', () => {
  const facts = {
    ...{ firm: 'Plover & Daughter', actor: 'Ines', vessel: 'Grey Wagtail', survey: '2026-0042' },
    timeZone: 'Europe/Lisbon',
    finding: { number: 4, title: 'Hose', dueOn: '2026-07-01' },
    data: {
      ...{ reason: 'R', statement: 'S', limit: 'L', limitUntil: '2026-07-02', dueOn: '2026-07-01', days: 3 },
      ...{
        kind: 'full',
        label: 'Full report',
        revision: 2,
        count: 2,
        since: '2026-05-01',
        date: '2026-05-04',
      },
      ...{
        total: '€ 1',
        typedName: 'T',
        startsAt: '2026-05-04T09:00:00Z',
        place: 'P',
        name: 'N',
        answer: 'A',
      },
      ...{ number: '7', text: 'X' },
    },
  };
  it.each(languages)('say something of every kind in %s', (language: Language) => {
    for (const kind of Object.keys(noticeKinds)) {
      const { about, sentence } = noticeText({ kind, facts }, language);
      expect(about).toContain('Grey Wagtail');
      expect(sentence, kind).not.toMatch(/undefined|NaN|Invalid|null/);
      expect(sentence).not.toBe(kind);
      expect(eventSummary(kind, facts.data)).not.toBe(kind);
    }
  });
});
