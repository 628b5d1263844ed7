import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { System, Urgency } from '@garboard/trade/vocabulary';
import { Client } from 'pg';
import { from } from 'pg-copy-streams';

/** Whose surveys are generated: people and firms that exist already, by their ids. */
export interface OfficePeople {
  /** The first has half of all surveys; the others share the rest. Each with who signs. */
  firms: readonly { id: string; surveyor: string }[];
  /** Party to a quarter of all surveys that were issued, of every firm. */
  insurer: string;
  /** Party to every survey that was issued. */
  owner: string;
}

export interface OfficeSize {
  surveys: number;
  /** Of each survey; 30 unless given. */
  findings?: number;
  /** Of each finding; 3 unless given. */
  photos?: number;
}

const kinds = { vessel: 1, survey: 2, finding: 3, photo: 4, clearance: 5, party: 6, attendance: 7 };

/** The id of the nth row of a kind; ids sort as they are made. */
export const officeId = (kind: keyof typeof kinds, n: number): string =>
  `01990000-0000-7000-8${kinds[kind]}00-${n.toString(16).padStart(12, '0')}`;

/** To which firm, by its place, the nth survey belongs: every other one to the first. */
const firmOf = (n: number, firms: number): number =>
  n % 2 === 0 || firms === 1 ? 0 : 1 + (((n - 1) / 2) % (firms - 1));

/** What a firm has in hand before a report is issued: a tenth of its surveys, of a long archive the last 40. */
const inHandAtMost = 40;
const early = ['enquiry', 'booked', 'attended', 'drafting', 'in-review'] as const;

/** Of the others three in nine wait for clearance and six are closed. */
function stateOf(n: number, inHand: boolean): string {
  if (inHand) return early[spread(n, 2) % early.length] ?? 'booked';
  return spread(n, 1) % 9 < 3 ? 'issued' : 'closed';
}

/** A number without order that depends on these alone. */
function spread(n: number, salt: number): number {
  let mixed = Math.imul(n + 1, 0x9e3779b1) ^ Math.imul(salt + 1, 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
  mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}

const digits = Array.from({ length: 4096 }, (_, n) =>
  spread(n, 10).toString(16).padStart(8, '0').repeat(7).slice(0, 52),
);
/** Hashes of one photo and its sizes: no two alike, begun with digits in no order, quickly made. */
const hashOf = (n: number, size: number): string =>
  spread(n, size).toString(16).padStart(8, '0') +
  (digits[n % 4096] ?? '') +
  (n % 65536).toString(16).padStart(4, '0');

const systems = ['hull', 'fuel', 'dc-electrical', 'steering', 'rig-sails', 'gas'] as const satisfies System[];
const urgencies = [
  'before-use',
  'within-days',
  'within-days',
  'next-layup',
  'within-days',
  'note',
] as const satisfies Urgency[];
const observed =
  'The clamp is rusted through and the hose can be pulled off by hand; the fitting below the waterline.';
const consequence = 'Water comes in faster than the pump can take it out.';
const recommendation = 'Renew the hose and both clamps; fit two clamps at each end.';

type Cell = string | number | boolean | null;
type Columns = Record<string, Cell>;

// Backslashes and tabs mean something to COPY; there are none but in JSON.
const cell = (value: Cell): string => (value === null ? '\\N' : String(value).replaceAll('\\', '\\\\'));

/** Loads rows of one kind into its table by COPY; they come frozen, so nothing has to go over them again. */
async function copy(client: Client, table: string, rows: Iterable<Columns>): Promise<number> {
  const iterator = rows[Symbol.iterator]();
  const first = iterator.next();
  if (first.done) return 0;
  const names = Object.keys(first.value).map((name) => `"${name}"`);
  let count = 0;
  function* chunks() {
    let chunk = '';
    for (let next = first; !next.done; next = iterator.next()) {
      chunk += `${Object.values(next.value as Columns)
        .map(cell)
        .join('\t')}\n`;
      count++;
      if (chunk.length > 200_000) {
        yield chunk;
        chunk = '';
      }
    }
    yield chunk;
  }
  const into = client.query(from(`COPY ${table} (${names.join(', ')}) FROM STDIN WITH (FREEZE)`));
  await pipeline(Readable.from(chunks(), { objectMode: true, highWaterMark: 4 }), into);
  return count;
}

interface Plan {
  people: OfficePeople;
  surveys: number;
  findings: number;
  photos: number;
  today: Date;
}

/** Surveys to a boat: it comes back every few years. */
const perBoat = 4;

function surveysOf(plan: Plan) {
  const { firms } = plan.people;
  const before = firms.map(() => 0);
  const all = firms.map(() => 0);
  for (let n = 0; n < plan.surveys; n++)
    all[firmOf(n, firms.length)] = (all[firmOf(n, firms.length)] ?? 0) + 1;
  return Array.from({ length: plan.surveys }, (_, n) => {
    const place = firmOf(n, firms.length);
    const firm = firms[place];
    if (!firm) throw new Error('An office needs a firm.');
    const [nth = 0, ofFirm = 0] = [before[place], all[place]];
    before[place] = nth + 1;
    const boat = Math.floor(nth / perBoat);
    const inHand = ofFirm - nth <= Math.min(inHandAtMost, ofFirm / 10);
    const vessel = officeId('vessel', place * plan.surveys + boat);
    const { id: firmId, surveyor } = firm;
    return { n, id: officeId('survey', n), firmId, surveyor, vessel, state: stateOf(n, inHand) };
  });
}
type Survey = ReturnType<typeof surveysOf>[number];

const dayMs = 86_400_000;
const day = (today: Date, days: number) =>
  new Date(today.getTime() + days * dayMs).toISOString().slice(0, 10);
const wasIssued = ({ state }: Survey) => state === 'issued' || state === 'closed';
const isCovered = (survey: Survey) => wasIssued(survey) && spread(survey.n, 3) % 4 === 0;

function* vesselRows(surveys: readonly Survey[]): Generator<Columns> {
  const seen = new Set<string>();
  for (const { vessel, firmId } of surveys) {
    if (seen.has(vessel)) continue;
    seen.add(vessel);
    yield { id: vessel, firm_id: firmId, name: `Sloop ${seen.size}` };
  }
}

function* surveyRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  for (const survey of surveys) {
    yield {
      id: survey.id,
      firm_id: survey.firmId,
      vessel_id: survey.vessel,
      number: `2026-${String(survey.n).padStart(6, '0')}`,
      purpose: 'insurance',
      state: survey.state,
      requested_by: 'The owner',
      surveyor_id: survey.surveyor,
      time_zone: survey.n % 2 === 0 ? 'Europe/Lisbon' : 'Pacific/Auckland',
      finding_count: plan.findings,
      photo_count: plan.findings * plan.photos,
      issued_at: wasIssued(survey) ? `${day(plan.today, -100)}T10:00:00Z` : null,
    };
  }
}

function* attendanceRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  for (const { n, id, firmId, state } of surveys) {
    if (state === 'enquiry') continue;
    const on = state === 'booked' ? (spread(n, 4) % 60) - 5 : -120 - (spread(n, 4) % 60);
    yield {
      id: officeId('attendance', n),
      firm_id: firmId,
      survey_id: id,
      ordinal: 0,
      date: day(plan.today, on),
      place: 'Slip',
      condition: 'afloat',
    };
  }
}

function* partyRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  for (const survey of surveys) {
    if (!wasIssued(survey)) continue;
    const row = (n: number, role: string, personId: string) => ({
      id: officeId('party', survey.n * 2 + n),
      firm_id: survey.firmId,
      survey_id: survey.id,
      person_id: personId,
      role,
      name: role,
      released: true,
    });
    yield row(0, 'owner', plan.people.owner);
    if (isCovered(survey)) yield row(1, 'insurer', plan.people.insurer);
  }
}

function* findingsOf(surveys: readonly Survey[], plan: Plan) {
  for (const survey of surveys) {
    for (let at = 0; at < plan.findings; at++) {
      const n = survey.n * plan.findings + at;
      const urgency = urgencies[spread(n, 5) % urgencies.length] ?? 'note';
      const issued = wasIssued(survey);
      const clearing = issued && (urgency === 'before-use' || urgency === 'within-days');
      const tenth = spread(n, 6) % 10;
      const cleared = survey.state === 'closed' || tenth > 7;
      const decided = cleared ? 'cleared' : tenth === 0 ? 'evidence-sent' : tenth === 1 ? 'returned' : 'open';
      const state = issued ? (clearing ? decided : 'open') : 'draft';
      yield { survey, n, number: at + 1, urgency, clearing, state, tenth };
    }
  }
}

function* findingRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  for (const { survey, n, number, urgency, clearing, state } of findingsOf(surveys, plan)) {
    const id = officeId('finding', n);
    const system = systems[spread(n, 7) % systems.length] ?? 'hull';
    const title = `Hose ${number} of ${survey.n}`;
    const withinDays = urgency === 'within-days' ? 30 : null;
    const words = { observed, consequence, recommendation };
    const photos = Array.from({ length: plan.photos }, (_, at) => ({
      id: officeId('photo', n * plan.photos + at),
      caption: '',
    }));
    const issued = {
      id,
      number,
      title,
      system,
      urgency,
      withinDays,
      harms: [],
      references: [],
      photos,
      ...words,
    };
    yield {
      id,
      firm_id: survey.firmId,
      survey_id: survey.id,
      number,
      system,
      title,
      ...words,
      urgency,
      within_days: withinDays,
      harms: '{flooding}',
      references: '{ISO 9094}',
      state,
      due_on: clearing ? day(plan.today, (spread(n, 8) % 800) - 100) : null,
      clearing,
      issued: state === 'draft' ? null : JSON.stringify(issued),
      issued_revision: state === 'draft' ? null : 1,
      // By hand what a trigger would keep.
      issued_title: title,
      issued_system: system,
      issued_urgency: urgency,
    };
  }
}

function* photosOf(surveys: readonly Survey[], plan: Plan) {
  for (const survey of surveys) {
    for (let at = 0; at < plan.findings * plan.photos; at++) {
      yield { survey, at, n: survey.n * plan.findings * plan.photos + at };
    }
  }
}

function* photoRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  const taken = `${day(plan.today, -120)}T10:00:`;
  for (const { survey, at, n } of photosOf(surveys, plan)) {
    const id = officeId('photo', n);
    const at60 = String(at % 60).padStart(2, '0');
    yield {
      id,
      firm_id: survey.firmId,
      survey_id: survey.id,
      sha256: hashOf(n, 11),
      bytes: 3_000_000,
      media_type: 'image/jpeg',
      file_name: `photo-${at}.jpg`,
      width: 4000,
      height: 3000,
      taken_at: `${taken}${at60}Z`,
      order_key: `${taken}${at60}.000Z-${id}`,
      caption: at % 10 === 0 ? `Clamp ${at}` : '',
      state: 'ready',
      thumb_hash: hashOf(n, 12),
      screen_hash: hashOf(n, 13),
      print_hash: hashOf(n, 14),
    };
  }
}

function* findingPhotoRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  for (const { survey, n } of photosOf(surveys, plan)) {
    const finding = officeId('finding', Math.floor(n / plan.photos));
    yield {
      firm_id: survey.firmId,
      finding_id: finding,
      photo_id: officeId('photo', n),
      ordinal: n % plan.photos,
    };
  }
}

const evidence: Record<string, { state: string; decision: string | null }> = {
  'evidence-sent': { state: 'sent', decision: null },
  returned: { state: 'returned', decision: 'return' },
  cleared: { state: 'accepted', decision: 'accept' },
};

function* clearanceRows(surveys: readonly Survey[], plan: Plan): Generator<Columns> {
  const { owner, insurer } = plan.people;
  for (const { survey, n, state, clearing } of findingsOf(surveys, plan)) {
    const outcome = clearing ? evidence[state] : undefined;
    if (!outcome) continue;
    const decided = outcome.decision !== null;
    yield {
      id: officeId('clearance', n),
      firm_id: survey.firmId,
      survey_id: survey.id,
      finding_id: officeId('finding', n),
      state: outcome.state,
      statement: 'A new hose of type A1 was fitted.',
      work_done_by: 'The yard',
      work_done_on: day(plan.today, -20),
      sent_by_id: owner,
      sent_by_name: 'The owner',
      sent_by_role: 'owner',
      sent_at: `${day(plan.today, -(spread(n, 9) % 20))}T08:00:00Z`,
      decision: outcome.decision,
      decided_by_id: decided ? insurer : null,
      decided_by_name: decided ? 'The insurer' : null,
      decided_by_role: decided ? 'insurer' : null,
      decided_at: decided ? `${day(plan.today, 0)}T09:00:00Z` : null,
    };
  }
}

const big = ['findings', 'photos', 'finding_photos', 'clearances'];
const all = ['vessels', 'surveys', 'attendances', 'parties', ...big];

/**
 * Fills a migrated database without surveys with those of an office, as the database's owner, who must be a superuser:
 * rows come by COPY past triggers and foreign keys, indexes of the long tables are made afterwards. 50 000 surveys
 * with 1.5 million findings and 4.5 million photos take minutes.
 *
 * @returns how many rows each table got
 */
export async function loadOffice(
  url: string,
  size: OfficeSize,
  people: OfficePeople,
  today = new Date(),
): Promise<Record<string, number>> {
  const plan: Plan = {
    people,
    surveys: size.surveys,
    findings: size.findings ?? 30,
    photos: size.photos ?? 3,
    today,
  };
  const surveys = surveysOf(plan);
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(`SET maintenance_work_mem = '512MB'`);
    const { rows: indexes } = await client.query<{ name: string; definition: string }>(
      `SELECT i.indexrelid::regclass::text AS name, pg_get_indexdef(i.indexrelid) AS definition
         FROM pg_index AS i
        WHERE i.indrelid = ANY ($1::regclass[]) AND NOT EXISTS (SELECT FROM pg_constraint AS c WHERE c.conindid = i.indexrelid)`,
      [big],
    );
    await client.query('BEGIN');
    await client.query('SET LOCAL session_replication_role = replica');
    await client.query(`TRUNCATE ${all.join(', ')} CASCADE`);
    for (const { name } of indexes) await client.query(`DROP INDEX ${name}`);
    const counts: Record<string, number> = {};
    const rows: [string, Iterable<Columns>][] = [
      ['vessels', vesselRows(surveys)],
      ['surveys', surveyRows(surveys, plan)],
      ['attendances', attendanceRows(surveys, plan)],
      ['parties', partyRows(surveys, plan)],
      ['findings', findingRows(surveys, plan)],
      ['photos', photoRows(surveys, plan)],
      ['finding_photos', findingPhotoRows(surveys, plan)],
      ['clearances', clearanceRows(surveys, plan)],
    ];
    for (const [table, generated] of rows) counts[table] = await copy(client, table, generated);
    for (const { definition } of indexes) await client.query(definition);
    await client.query('COMMIT');
    // As the server itself does within minutes of such a load; until then pages are read only to see whether rows are new.
    await client.query('VACUUM (ANALYZE)');
    return counts;
  } finally {
    await client.end();
  }
}
