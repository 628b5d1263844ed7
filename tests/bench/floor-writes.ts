import { newId } from '@garboard/db/ids';
import type { Pool, PoolClient } from 'pg';

// The bare inserts and updates that a write of ours leaves behind, each prepared, in one transaction: nobody signs in,
// nothing is looked up, allowed or answered. What the database does by itself (triggers, the chain of events) it does
// here too.

async function inOne(pool: Pool, work: (client: PoolClient) => Promise<unknown>): Promise<void> {
  const client = await pool.connect();
  try {
    await client.query('BEGIN');
    await work(client);
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  } finally {
    client.release();
  }
}

interface Noted {
  firm: string;
  survey: string;
  finding: string;
  kind: string;
}

async function note(client: PoolClient, { firm, survey, finding, kind }: Noted): Promise<void> {
  const id = newId();
  await client.query({
    name: 'event',
    text: `INSERT INTO events (id, firm_id, survey_id, finding_id, kind, actor_name, actor_role, data)
           VALUES ($1, $2, $3, $4, $5, 'Floor', 'surveyor', '{"title": "Hose"}')`,
    values: [id, firm, survey, finding, kind],
  });
  await client.query({
    name: 'outbox',
    text: `INSERT INTO outbox (id, job, data) VALUES ($1, 'event.fan-out', jsonb_build_object('firmId', $2::text, 'eventId', $3::text))`,
    values: [newId(), firm, id],
  });
}

export interface NewFinding {
  firm: string;
  survey: string;
  photos: string[];
}

export const insertFinding = (pool: Pool, { firm, survey, photos }: NewFinding) =>
  inOne(pool, async (client) => {
    const id = newId();
    // The survey's row first, as ours holds it: findings are numbered one after the other.
    await client.query({
      name: 'count',
      text: `UPDATE surveys SET finding_count = finding_count + 1, updated_at = now() WHERE id = $1`,
      values: [survey],
    });
    await client.query({
      name: 'finding',
      text: `INSERT INTO findings (id, firm_id, survey_id, number, system, title, observed, urgency, harms, "references")
             VALUES ($1, $2, $3, (SELECT max(number) + 1 FROM findings WHERE survey_id = $3), 'hull', 'Hose', $4, 'note', '{}', '{}')`,
      values: [id, firm, survey, 'The clamp is rusted through.'],
    });
    await client.query({
      name: 'finding-photos',
      text: `INSERT INTO finding_photos (firm_id, finding_id, photo_id, ordinal)
             SELECT $1, $2, photo, place FROM unnest($3::uuid[]) WITH ORDINALITY AS p (photo, place)`,
      values: [firm, id, photos],
    });
    await note(client, { firm, survey, finding: id, kind: 'finding.created' });
  });

export interface NewEvidence {
  firm: string;
  survey: string;
  finding: string;
}

export const insertEvidence = (pool: Pool, { firm, survey, finding }: NewEvidence) =>
  inOne(pool, async (client) => {
    await client.query({
      name: 'send',
      text: `UPDATE findings SET state = 'evidence-sent', updated_at = now() WHERE id = $1`,
      values: [finding],
    });
    await client.query({
      name: 'clearance',
      text: `INSERT INTO clearances (id, firm_id, survey_id, finding_id, statement, work_done_by, work_done_on, sent_by_name, sent_by_role)
             VALUES ($1, $2, $3, $4, 'A new hose was fitted.', 'The yard', current_date, 'Floor', 'owner')`,
      values: [newId(), firm, survey, finding],
    });
    await note(client, { firm, survey, finding, kind: 'evidence.sent' });
  });

export interface NewDecision extends NewEvidence {
  clearance: string;
}

export const insertDecision = (pool: Pool, { firm, survey, finding, clearance }: NewDecision) =>
  inOne(pool, async (client) => {
    await client.query({
      name: 'decide',
      text: `UPDATE clearances SET state = 'accepted', decision = 'accept', reason = '', decided_by_name = 'Floor',
                    decided_by_role = 'insurer', decided_at = now() WHERE id = $1`,
      values: [clearance],
    });
    await client.query({
      name: 'clear',
      text: `UPDATE findings SET state = 'cleared', updated_at = now() WHERE id = $1`,
      values: [finding],
    });
    await note(client, { firm, survey, finding, kind: 'evidence.accepted' });
  });
