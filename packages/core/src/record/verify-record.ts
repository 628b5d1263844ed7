import { createHash } from 'node:crypto';
import { Prisma, type Tx } from '@garboard/db/database';

/** Where a record isn't what was written, and what is wrong there. */
export interface Break {
  /** The entry's number in the firm's record; null for an event that no entry names. */
  seq: number | null;
  eventId: string | null;
  /** A sentence. */
  problem: string;
}

/** Runs reads in a transaction that sees the rows of the firms in question; one for all, or one each time. */
export type Reads = <T>(work: (tx: Tx) => Promise<T>) => Promise<T>;

export interface CheckedRecord {
  firmId: string;
  entries: number;
  /** The last entry's hash, 64 hex digits; null for an empty record. */
  head: string | null;
  broken: Break | null;
}

interface Row {
  seq: number;
  event_id: string;
  details_hash: Uint8Array;
  previous_hash: Uint8Array;
  hash: Uint8Array;
  /** The event's fields as they were hashed, after its number; null when there is no such event. */
  before: string[] | null;
  after: string[] | null;
  salt: Uint8Array | null;
  details: string | null;
  erased_by: string | null;
  erasure_known: boolean;
}

const batch = 2_000;
const genesis = '00'.repeat(32);
const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');
const sha256 = (...parts: (string | Uint8Array)[]) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
};

/**
 * Works a firm's whole record again, entry by entry, outside of the database that wrote it, and stops at the first
 * break. Entries written meanwhile do no harm.
 */
export async function verifyRecord(read: Reads, firmId: string): Promise<CheckedRecord> {
  const [head] = await read(
    (tx) => tx.$queryRaw<{ seq: number; hash: Uint8Array }[]>`
      SELECT seq::int, hash FROM event_heads WHERE firm_id = ${firmId}::uuid`,
  );
  const found = { firmId, entries: 0, head: null as string | null };
  // The hashes of the last two entries; before the first there is only the beginning.
  let [before, last] = ['', genesis];
  for (;;) {
    const rows = await read((tx) => entriesAfter(tx, firmId, found.entries));
    if (rows.length === 0) break;
    for (const row of rows) {
      const broken = breakAt(row, { expected: found.entries + 1, before, last });
      if (broken) return { ...found, broken };
      found.entries = row.seq;
      [before, last] = [last, hex(row.hash)];
      found.head = last;
      if (head && row.seq === head.seq && last !== hex(head.hash)) {
        const problem = 'It was rewritten: the database has noted another as the last one written.';
        return { ...found, broken: { seq: row.seq, eventId: row.event_id, problem } };
      }
    }
  }
  if (found.entries < (head?.seq ?? 0)) {
    const problem = `It is missing, and so is all that follows: the record had ${head?.seq} entries.`;
    return { ...found, broken: { seq: found.entries + 1, eventId: null, problem } };
  }
  return { ...found, broken: await read((tx) => unlinked(tx, firmId)) };
}

/** Whether a record still holds the entry with this number and hash, as noted at an earlier check. */
export async function stillHolds(
  read: Reads,
  noted: { firmId: string; entries: number; head: string },
): Promise<boolean> {
  const rows = await read(
    (tx) => tx.$queryRaw<{ hash: Uint8Array }[]>`
      SELECT hash FROM event_links WHERE firm_id = ${noted.firmId}::uuid AND seq = ${noted.entries}`,
  );
  return rows[0] !== undefined && hex(rows[0].hash) === noted.head;
}

function entriesAfter(tx: Tx, firmId: string, seq: number): Promise<Row[]> {
  const text = (column: string) => Prisma.raw(`coalesce(e.${column}::text, '-')`);
  return tx.$queryRaw<Row[]>`
    SELECT l.seq::int, l.event_id, l.details_hash, l.previous_hash, l.hash,
      CASE WHEN e.id IS NOT NULL THEN ARRAY[e.firm_id::text] END AS before,
      CASE WHEN e.id IS NOT NULL THEN ARRAY[
        e.id::text, ${text('survey_id')}, ${text('finding_id')}, ${text('report_id')},
        to_char(e.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
        e.kind, ${text('actor_id')}, e.actor_role] END AS after,
      e.salt, e.actor_name || chr(10) || e.data::text AS details, e.erased_by,
      x.id IS NOT NULL AS erasure_known
    FROM event_links l
    LEFT JOIN events e ON e.id = l.event_id
    LEFT JOIN events x ON x.id = e.erased_by AND x.firm_id = l.firm_id AND x.kind = 'person.erased'
    WHERE l.firm_id = ${firmId}::uuid AND l.seq > ${seq}
    ORDER BY l.seq LIMIT ${batch}`;
}

function breakAt(row: Row, at: { expected: number; before: string; last: string }): Break | null {
  const here = (problem: string): Break => ({ seq: row.seq, eventId: row.event_id, problem });
  if (row.seq !== at.expected) {
    return { seq: at.expected, eventId: null, problem: `It is missing: entry ${row.seq} comes next.` };
  }
  if (!row.before || !row.after) return here('Its event was deleted.');
  const details = hex(row.details_hash);
  const previous = hex(row.previous_hash);
  const entry = ['garboard event 1', previous, ...row.before, String(row.seq), ...row.after, details];
  const whole = sha256(entry.join('\n')) === hex(row.hash);
  if (previous !== at.last) {
    const earlier = (problem: string): Break => ({ seq: row.seq - 1, eventId: null, problem });
    if (previous === at.before)
      return earlier('It was put in later: the next one follows the one before it.');
    if (whole && row.seq > 1) return earlier('It was rewritten: the next one was written after another.');
    return here('It is not the one that was written here: it follows another entry.');
  }
  if (!whole) return here('It was changed after it was written.');
  if (row.salt) {
    const same = sha256(row.salt, row.details ?? '') === details;
    return same ? null : here('Its particulars were changed after it was written.');
  }
  return row.erasure_known ? null : here('Its particulars were taken away without an erasure on record.');
}

async function unlinked(tx: Tx, firmId: string): Promise<Break | null> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    SELECT e.id FROM events e
    WHERE e.firm_id = ${firmId}::uuid AND NOT EXISTS (SELECT FROM event_links l WHERE l.event_id = e.id)
    ORDER BY e.id LIMIT 1`;
  const [row] = rows;
  return row ? { seq: null, eventId: row.id, problem: 'It was put in past the record.' } : null;
}
