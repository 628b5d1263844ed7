import { randomUUID } from 'node:crypto';
import { Client } from 'pg';
import { officeId } from '../support/office.ts';
import type { NewDecision, NewEvidence, NewFinding } from './floor-writes.ts';
import type { Bench, Comparison, Round } from './harness.ts';
import { askOnceEach, type Once } from './load.ts';
import { type Office, withOffices } from './offices.ts';

const connections = 16;
/** Writes of a round; each is made once, so a small office has fewer. */
const perRound = { findings: 200, evidence: 200, decisions: 40 };

/** Gives rows out in equal shares, each row once: one share for each round of each side, and one to warm up. */
function sharesOf<T>(bench: Bench, rows: readonly T[], most: number): () => T[] {
  const count = Math.min(most, Math.floor(rows.length / (bench.rounds * 2 + 2)));
  if (count === 0) throw new Error('The office is too small for so many rounds.');
  let taken = 0;
  return () => {
    taken += count;
    return rows.slice(taken - count, taken);
  };
}

async function rowsOf<T extends object>(office: Office, sql: string, values: unknown[]): Promise<T[]> {
  const client = new Client({ connectionString: office.databaseUrl });
  await client.connect();
  try {
    return (await client.query<T>(sql, values)).rows;
  } finally {
    await client.end();
  }
}

const evidenceForm = () => {
  const boundary = randomUUID();
  const fields = {
    statement: 'A new hose of type A1 was fitted.',
    workDoneBy: 'The yard',
    workDoneOn: '2026-01-01',
  };
  const parts = Object.entries(fields).map(
    ([name, value]) => `--${boundary}\r\ncontent-disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  return {
    body: `${parts.join('')}--${boundary}--\r\n`,
    type: `multipart/form-data; boundary=${boundary}`,
  };
};

async function writesOf(bench: Bench, office: Office): Promise<Comparison[]> {
  const enough = bench.rounds * 2 + 2;
  const surveys = await rowsOf<{ firm: string; survey: string }>(
    office,
    `SELECT firm_id AS firm, id AS survey FROM surveys WHERE firm_id = $1 AND state IN ('attended', 'drafting', 'in-review', 'issued')
      ORDER BY id LIMIT 40`,
    [office.firm.id],
  );
  // Photos that no finding shows twice: those of the survey itself, three in turn.
  const findings: NewFinding[] = Array.from({ length: perRound.findings * enough }, (_, n) => {
    const { firm, survey } = surveys[n % surveys.length] ?? { firm: '', survey: '' };
    const place = Number.parseInt(survey.slice(-12), 16) * 90;
    return { firm, survey, photos: [0, 1, 2].map((at) => officeId('photo', place + ((n * 3 + at) % 90))) };
  });
  const evidence = await rowsOf<NewEvidence>(
    office,
    `SELECT firm_id AS firm, survey_id AS survey, id AS finding FROM findings WHERE state = 'open' AND clearing
      ORDER BY md5(id::text) LIMIT $1`,
    [perRound.evidence * enough],
  );
  const decisions = await rowsOf<NewDecision>(
    office,
    `SELECT c.firm_id AS firm, c.survey_id AS survey, c.finding_id AS finding, c.id AS clearance
       FROM clearances c JOIN parties p ON p.survey_id = c.survey_id AND p.person_id = $1
      WHERE c.state = 'sent' ORDER BY md5(c.id::text) LIMIT $2`,
    [office.insurer.id, perRound.decisions * enough],
  );
  const bearer = (token: string) => ({ authorization: `Bearer ${token}` });
  const json = 'application/json';
  const form = evidenceForm();
  return [
    sideBySide(office, 'a finding with photos', sharesOf(bench, findings, perRound.findings), {
      ours: ({ survey, photos }) => ({
        path: `/v1/surveys/${survey}/findings`,
        headers: { ...bearer(office.firm.surveyor.token), 'content-type': json },
        body: JSON.stringify({
          ...{ system: 'hull', title: 'Hose', observed: 'The clamp is rusted through.', urgency: 'note' },
          photoIds: photos,
        }),
      }),
      floor: '/findings',
    }),
    sideBySide(office, 'evidence', sharesOf(bench, evidence, perRound.evidence), {
      ours: ({ finding }) => ({
        path: `/v1/findings/${finding}/clearances`,
        headers: { ...bearer(office.owner.token), 'content-type': form.type },
        body: form.body,
      }),
      floor: '/evidence',
    }),
    sideBySide(office, 'a decision', sharesOf(bench, decisions, perRound.decisions), {
      ours: ({ clearance }) => ({
        path: `/v1/clearances/${clearance}/decision`,
        headers: { ...bearer(office.insurer.token), 'content-type': json },
        body: JSON.stringify({ decision: 'accept' }),
      }),
      floor: '/decisions',
    }),
  ];
}

interface Sides<T> {
  ours: (row: T) => Once;
  /** The floor is sent the row itself. */
  floor: string;
}

function sideBySide<T>(office: Office, what: string, share: () => T[], sides: Sides<T>): Comparison {
  const bare = (row: T): Once => ({
    path: sides.floor,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(row),
  });
  const round = (url: string, once: (row: T) => Once) => (): Promise<Round> =>
    askOnceEach(url, share().map(once), connections);
  return {
    ...{ what, size: office.size, unit: 'writes/s' },
    ours: round(office.ours, sides.ours),
    floor: round(office.floor, bare),
  };
}

/** Writes over HTTP, against the bare inserts that they cause. */
export async function run(bench: Bench): Promise<void> {
  await withOffices(bench, async (offices) => {
    const comparisons: Comparison[] = [];
    for (const office of offices) {
      const writes = await writesOf(bench, office);
      for (const { ours, floor } of writes) {
        await ours();
        await floor();
      }
      comparisons.push(...writes);
    }
    await bench.compare(comparisons.sort((a, b) => a.what.localeCompare(b.what)));
  });
}
