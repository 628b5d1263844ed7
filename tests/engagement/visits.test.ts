import { inTransaction } from '@garboard/db/database';
import ICAL from 'ical.js';
import ical from 'node-ical';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { type Setting, setting, surveyWith } from './setting.ts';

let server: TestServer;
let at: Setting;
beforeAll(async () => {
  server = await startServer();
  at = await setting(server);
});
afterAll(() => server.close());

const hours = (n: number) => new Date(Date.now() + n * 3_600_000).toISOString();
const plan = {
  ...{ startsAt: hours(48), endsAt: hours(52), place: 'Ropewalk Yard, berth 4; east side' },
  ...{ condition: 'ashore', note: 'Keys at the office, ask for “Ana”.\nLift booked\\confirmed.' },
};

describe('a visit', () => {
  it('is arranged with yard and broker, answered, moved, answered anew and made', async () => {
    const survey = await surveyWith(server, at, ['buyer', 'broker', 'yard', 'insurer']);
    const { broker, yard, insurer, buyer } = survey;
    const ids = [broker.partyId, yard.partyId];
    const made = await at.office
      .post(`${survey.path}/visits`)
      .send({ ...plan, partyIds: ids })
      .expect(201);
    const path = `/v1/visits/${made.body.id}`;
    expect(made.body).toMatchObject({ state: 'arranged', timeZone: 'Europe/Lisbon', version: 1 });
    expect(made.body.asks.map((a: { role: string }) => a.role).sort()).toEqual(['broker', 'yard']);
    expect((await at.office.get(survey.path)).body.state).toBe('booked');

    const yes = { answer: 'confirmed', note: 'Slings ready.' };
    const said = await yard.as.put(`${path}/answer`).send(yes).expect(200);
    expect(said.body.asks).toEqual([expect.objectContaining({ role: 'yard', mine: true, ...yes })]);
    await broker.as.put(`${path}/answer`).send({ answer: 'declined' }).expect(200);
    // Others may know of the visit, or not even that.
    expect((await buyer.as.get(`${survey.path}/visits`).expect(200)).body.items[0].asks).toEqual([]);
    await buyer.as.put(`${path}/answer`).send(yes).expect(409);
    await insurer.as.get(`${survey.path}/visits`).expect(403);
    await insurer.as.put(`${path}/answer`).send(yes).expect(404);
    await yard.as.patch(path).send({ note: 'x' }).expect(403);

    const noted = await at.office
      .patch(path)
      .set('if-match', '"1"')
      .send({ note: 'Keys on board.' })
      .expect(200);
    expect(noted.body.asks.map((a: { answer: string }) => a.answer).sort()).toEqual([
      'confirmed',
      'declined',
    ]);
    await at.office.patch(path).set('if-match', '"1"').send({ note: 'x' }).expect(412);
    await at.office
      .patch(path)
      .send({ endsAt: hours(47) })
      .expect(422);
    const moved = await at.office
      .patch(path)
      .send({ startsAt: hours(72), endsAt: hours(75) })
      .expect(200);
    expect(moved.body.asks.map((a: { answer: string }) => a.answer)).toEqual(['asked', 'asked']);
    const other = await surveyWith(server, at, ['yard']);
    await at.office
      .patch(path)
      .send({ partyIds: [other.yard.partyId] })
      .expect(422);
    await yard.as.put(`${path}/answer`).send(yes).expect(200);

    await at.surveyor.post(`${path}/attendance`).expect(200);
    await at.surveyor.post(`${path}/attendance`).expect(409);
    await yard.as.put(`${path}/answer`).send(yes).expect(409);
    const { body: after } = await at.office.get(survey.path);
    expect(after).toMatchObject({
      state: 'attended',
      attendances: [{ place: plan.place, condition: 'ashore' }],
    });
  });

  it('is called off', async () => {
    const survey = await surveyWith(server, at, ['yard']);
    const { body } = await at.office.post(`${survey.path}/visits`).send(plan).expect(201);
    await at.office.post(`/v1/visits/${body.id}/cancellation`).send({}).expect(422);
    const off = await at.office
      .post(`/v1/visits/${body.id}/cancellation`)
      .send({ reason: 'Gale.' })
      .expect(200);
    expect(off.body.state).toBe('cancelled');
    await at.office.patch(`/v1/visits/${body.id}`).send({ note: 'x' }).expect(409);
  });

  it('shows a party the row of its own answer alone, by row-level security', async () => {
    const survey = await surveyWith(server, at, ['broker', 'yard', 'insurer']);
    const partyIds = [survey.broker.partyId, survey.yard.partyId];
    await at.office
      .post(`${survey.path}/visits`)
      .send({ ...plan, partyIds })
      .expect(201);
    const seen = (person: string) =>
      inTransaction(server.db, { firmIds: [], personId: person, asParty: true }, async (tx) => [
        await tx.visit.count({ where: { surveyId: survey.id } }),
        await tx.visitAsk.count({ where: { surveyId: survey.id } }),
      ]);
    expect(await seen(survey.yard.person.id)).toEqual([1, 1]);
    expect(await seen(survey.insurer.person.id)).toEqual([0, 0]);
  });
});

describe('the calendar of visits (RFC 5545)', () => {
  const feedOf = async (who: Setting['surveyor']) =>
    new URL((await who.post('/v1/me/calendar-feed').expect(201)).body.address).pathname;
  const read = async (path: string) => {
    const answer = await server.as(null).get(path).buffer(true).expect(200);
    expect(answer.headers['content-type']).toBe('text/calendar; charset=utf-8');
    return answer.text;
  };
  const events = (text: string) =>
    new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((v) => new ICAL.Event(v));

  it('is read by two independent parsers as it was meant', async () => {
    const place = 'Ropewalk Yard; quay 3, “Ørsted’s shed”, behind the long wall of the old sail loft 船';
    const survey = await surveyWith(server, at, ['yard']);
    const body = { ...plan, place, partyIds: [survey.yard.partyId] };
    // Before and after the clocks in Lisbon go back, on 31 October 2027: 08:00 and 09:00 in UTC are 09:00 there.
    const summer = { startsAt: '2027-10-30T08:00:00.000Z', endsAt: '2027-10-30T11:00:00.000Z' };
    const winter = { startsAt: '2027-10-31T09:00:00.000Z', endsAt: '2027-10-31T12:00:00.000Z' };
    const ids: string[] = [];
    for (const time of [summer, winter]) {
      const made = await at.office
        .post(`${survey.path}/visits`)
        .send({ ...body, ...time })
        .expect(201);
      ids.push(made.body.id);
    }
    const text = await read(await feedOf(survey.yard.as));

    // 3.1: lines end with CRLF and are at most 75 octets, folded between characters; 3.4: one VCALENDAR object.
    const lines = text.split('\r\n');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(lines.filter((l) => Buffer.byteLength(l, 'utf8') > 75)).toEqual([]);
    expect(lines.some((l) => l.startsWith(' '))).toBe(true);
    expect(text).not.toContain('\ufffd');
    expect(lines.slice(0, 2)).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0']);
    // 3.3.5, form 2: UTC; 3.8.7.2: DTSTAMP; 3.8.4.7: UID; 3.8.7.4: SEQUENCE.
    expect(text).toContain('DTSTART:20271030T080000Z');
    for (const name of ['DTSTAMP', 'UID', 'SEQUENCE', 'PRODID'])
      expect(text).toMatch(new RegExp(`^${name}:`, 'm'));

    const read1 = events(text);
    expect(
      read1.map((e) => [e.startDate.toJSDate().toISOString(), e.endDate.toJSDate().toISOString()]),
    ).toEqual([
      [summer.startsAt, summer.endsAt],
      [winter.startsAt, winter.endsAt],
    ]);
    // 3.3.11: commas, semicolons, backslashes and line feeds come back as they were written.
    expect(read1[0]?.location).toBe(place);
    expect(read1[0]?.description).toContain(plan.note);
    for (const event of read1) expect(event.description).toContain('09:00 to 12:00, Europe/Lisbon time.');
    expect(read1.map((e) => e.uid)).toEqual(ids.map((id) => `visit-${id}@127.0.0.1`));
    expect(read1[0]?.component.getFirstPropertyValue('status')).toBe('TENTATIVE');

    const read2 = Object.values(ical.sync.parseICS(text)).filter((e) => e?.type === 'VEVENT');
    expect(read2.map((e) => e?.type === 'VEVENT' && [e.start.toISOString(), e.location])).toEqual([
      [summer.startsAt, place],
      [winter.startsAt, place],
    ]);

    // A move keeps the entry's name and raises its sequence; calling off says so.
    await at.office.patch(`/v1/visits/${ids[0]}`).send({ startsAt: '2027-10-30T07:00:00.000Z' }).expect(200);
    await survey.yard.as.put(`/v1/visits/${ids[0]}/answer`).send({ answer: 'confirmed' }).expect(200);
    await at.office.post(`/v1/visits/${ids[1]}/cancellation`).send({ reason: 'Gale.' }).expect(200);
    const after = events(await read(await feedOf(survey.yard.as)));
    const facts = after.map((e) => [e.uid, e.sequence, e.component.getFirstPropertyValue('status')]);
    expect(facts).toEqual([
      [`visit-${ids[0]}@127.0.0.1`, 1, 'CONFIRMED'],
      [`visit-${ids[1]}@127.0.0.1`, 1, 'CANCELLED'],
    ]);
    // What has been declined is no entry any more.
    await survey.yard.as.put(`/v1/visits/${ids[0]}/answer`).send({ answer: 'declined' }).expect(200);
    expect(events(await read(await feedOf(survey.yard.as)))).toHaveLength(1);
  });

  it('holds for each person what is theirs, and what the yard said for the firm alone', async () => {
    const mine = await setting(server);
    const survey = await surveyWith(server, mine, ['yard', 'broker']);
    const partyIds = [survey.yard.partyId];
    const { body } = await mine.office
      .post(`${survey.path}/visits`)
      .send({ ...plan, partyIds })
      .expect(201);
    await survey.yard.as
      .put(`/v1/visits/${body.id}/answer`)
      .send({ answer: 'confirmed', note: 'Crane at nine.' })
      .expect(200);
    const [office, surveyor, broker, stranger] = await Promise.all(
      [mine.office, mine.surveyor, survey.broker.as, at.office].map(async (who) => read(await feedOf(who))),
    );
    expect(events(office ?? '')[0]?.description).toContain('Crane at nine.');
    expect(events(surveyor ?? '')).toHaveLength(1);
    expect(events(broker ?? '')).toHaveLength(0);
    expect(stranger).not.toContain(body.id);
    // Signed by somebody else, it is not in this surveyor's calendar.
    await mine.office.patch(survey.path).send({ surveyorId: mine.firm.principal.id }).expect(200);
    expect(events(await read(await feedOf(mine.surveyor)))).toHaveLength(0);
  });

  it('has a secret address that a new one or its owner ends', async () => {
    const first = await feedOf(at.surveyor);
    await read(first);
    const state = await at.surveyor.get('/v1/me/calendar-feed').expect(200);
    expect(state.body).toMatchObject({ address: null, lastReadAt: expect.any(String) });
    const second = await feedOf(at.surveyor);
    await server.as(null).get(first).expect(404);
    await read(second);
    await at.surveyor.delete('/v1/me/calendar-feed').expect(204);
    await server.as(null).get(second).expect(404);
    await server
      .as(null)
      .get(`/v1/calendars/${'x'.repeat(43)}/visits.ics`)
      .expect(404);
    await server.as(null).post('/v1/me/calendar-feed').expect(401);
  });
});
