import { Client } from 'pg';

/** How much is loaded; ten recommendations a covered survey. */
export interface LongLists {
  /** Surveys of the busy firm, in every state. */
  jobs: number;
  /** Surveys, of two other firms, on which the insurer decides. */
  covered: number;
  /** Boats among which those are spread. */
  boats: number;
}

/** People and firms that exist already, by their ids. */
export interface LongListPeople {
  busyFirm: string;
  surveyor: string;
  coverFirms: [string, string];
  insurer: string;
  owner: string;
}

const uuid = (kind: number, n: string) =>
  `('01990000-0000-7000-8${kind}00-' || lpad(to_hex(${n}), 12, '0'))::uuid`;
const words = `'The clamp is rusted through and the hose can be pulled off by hand; the fitting below the waterline.'`;

/**
 * Loads surveys by the thousand with plain statements, as the database's owner. A tenth of the recommendations wait for
 * a decision, six tenths for the owner, the rest are decided; days lie around `today`, an eighth of them passed.
 */
export async function loadLongLists(
  url: string,
  sizes: LongLists,
  people: LongListPeople,
  today: string,
): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  const vessels = (kind: number, n: number, firm: string) =>
    client.query(
      `INSERT INTO vessels (id, firm_id, name, updated_at)
       SELECT ${uuid(kind, 'n')}, ${firm}, 'Sloop ' || n, now() FROM generate_series(1, ${n}) AS n`,
    );
  const surveys = (kind: number, n: number, boats: number, firm: string, state: string) =>
    client.query(
      `INSERT INTO surveys (id, firm_id, vessel_id, number, purpose, state, surveyor_id, time_zone, issued_at, updated_at)
       SELECT ${uuid(kind, 'n')}, ${firm}, ${uuid(kind - 1, `1 + n % ${boats}`)},
              '2026-' || lpad(n::text, 6, '0'), 'insurance', ${state}, $1,
              CASE WHEN n % 2 = 0 THEN 'Europe/Lisbon' ELSE 'Pacific/Auckland' END,
              CASE WHEN ${state} IN ('issued', 'closed') THEN now() END, now()
         FROM generate_series(1, ${n}) AS n`,
      [people.surveyor],
    );
  const findings = (kind: number, of: number, each: number) =>
    client.query(
      `INSERT INTO findings (id, firm_id, survey_id, number, system, title, observed, urgency, within_days, state,
                             due_on, clearing, issued, updated_at)
       SELECT ${uuid(kind, `row_number() OVER (ORDER BY s.id, n)`)}, s.firm_id, s.id, n, 'fuel',
              'Fuel hose ' || n || ' of ' || s.number, ${words}, 'within-days', 30,
              CASE WHEN s.state = 'closed' OR h % 10 > 6 THEN 'cleared' WHEN h % 10 = 0 THEN 'evidence-sent' ELSE 'open' END,
              $1::date - 100 + h % 800, true,
              jsonb_build_object('title', 'Fuel hose ' || n || ' of ' || s.number, 'system', 'fuel',
                                 'urgency', 'within-days', 'observed', repeat(${words}, 15)), now()
         FROM surveys s
        CROSS JOIN generate_series(1, ${each}) AS n
        CROSS JOIN LATERAL (SELECT abs(hashtext(s.id::text || n)) AS h) AS spread
        WHERE s.state IN ('issued', 'closed') AND s.id BETWEEN ${uuid(of, '0')} AND ${uuid(of, '99999999')}`,
      [today],
    );
  try {
    await client.query('BEGIN');
    const busy = `'${people.busyFirm}'::uuid`;
    const cover = `(ARRAY['${people.coverFirms.join("', '")}'])[1 + n % 2]::uuid`;
    const boats = Math.max(1, Math.ceil(sizes.jobs / 5));
    await vessels(1, boats, busy);
    await surveys(
      2,
      sizes.jobs,
      boats,
      busy,
      `(ARRAY['enquiry', 'booked', 'attended', 'drafting', 'in-review', 'issued', 'issued', 'issued', 'closed', 'closed'])[1 + n % 10]`,
    );
    await client.query(
      `INSERT INTO attendances (id, firm_id, survey_id, ordinal, date, place, condition)
       SELECT gen_random_uuid(), firm_id, id, 0, $1::date - 5 + abs(hashtext(id::text)) % 60, 'Slip', 'afloat'
         FROM surveys WHERE firm_id = ${busy} AND state <> 'enquiry'`,
      [today],
    );
    await findings(3, 2, 2);
    await vessels(4, sizes.boats, cover);
    await surveys(5, sizes.covered, sizes.boats, cover, `'issued'`);
    await findings(6, 5, 10);
    await client.query(
      `INSERT INTO parties (id, firm_id, survey_id, person_id, role, name, released)
       SELECT gen_random_uuid(), firm_id, id, $1, 'insurer', 'Cover', true FROM surveys WHERE firm_id <> ${busy}`,
      [people.insurer],
    );
    await client.query(
      `INSERT INTO clearances (id, firm_id, survey_id, finding_id, statement, work_done_by, work_done_on, sent_by_id,
                               sent_by_name, sent_by_role, sent_at)
       SELECT f.id, f.firm_id, f.survey_id, f.id, 'A new hose of type A1 was fitted.', 'The yard', $1::date, $2,
              'The owner', 'owner', now() - (f.number || ' hours')::interval
         FROM findings f WHERE f.state = 'evidence-sent'`,
      [today, people.owner],
    );
    await client.query('COMMIT');
    await client.query('VACUUM ANALYZE');
  } finally {
    await client.end();
  }
}
