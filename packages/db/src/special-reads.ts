import { type Database, Prisma, type Tx, widen } from './database.ts';
import { readAlone } from './reading.ts';

/** Who a session belongs to and which firms that person is entitled to touch, as the database tells it. */
export interface SessionRow {
  person_id: string;
  name: string;
  email: string;
  last_seen_at: Date;
  /** Firms and roles there, `firm:role` with commas between; in no particular order. */
  memberships: string;
  /** Ids of the firms in whose surveys the person takes part, with commas between. */
  part_in: string;
}

/** Where the person behind an unexpired session is found: one `SessionRow` or none. */
export const sessionsOf = (tokenHash: string): Prisma.Sql => Prisma.sql`garboard_session(${tokenHash})`;

/** The person behind an unexpired session, in one round trip; null when there is none. */
export async function findSession(db: Database, tokenHash: string): Promise<SessionRow | null> {
  const rows = await readAlone<SessionRow>(db, Prisma.sql`SELECT * FROM ${sessionsOf(tokenHash)}`);
  return rows[0] ?? null;
}

/** Notes that a session was used, and from where; its end moves on with it, up to its longest life. */
export async function touchSession(
  db: Database,
  seen: { tokenHash: string; address: string; now: Date; idleMs: number; longestMs: number },
): Promise<void> {
  const { tokenHash, address, now, idleMs, longestMs } = seen;
  const idleEnd = new Date(now.getTime() + idleMs);
  await db.prisma.$executeRaw`
    UPDATE sessions SET last_seen_at = ${now}, address = ${address},
      expires_at = least(${idleEnd}, created_at + ${longestMs} * interval '1 millisecond')
    WHERE token_hash = ${tokenHash}`;
}

/** Whom an API key lets act, in which role in which firm. */
export interface ApiKeyRow {
  key_id: string;
  firm_id: string;
  role: string;
  access: string;
  person_id: string;
  name: string;
  email: string;
  /** Whether the role is one of the firm's staff; else a party's. */
  is_staff: boolean;
}

/** What a usable key stands for, and notes that it was used; null when it doesn't work, or its role was lost. */
export async function useApiKey(db: Database, tokenHash: string): Promise<ApiKeyRow | null> {
  const rows = await db.prisma.$queryRaw<ApiKeyRow[]>`SELECT * FROM garboard_use_api_key(${tokenHash})`;
  return rows[0] ?? null;
}

/** The share link with this secret, of any firm; null when there is none. */
export async function findShareLink(
  tx: Tx,
  tokenHash: string,
): Promise<{ id: string; firm_id: string } | null> {
  const rows = await tx.$queryRaw<{ id: string; firm_id: string }[]>`
    SELECT * FROM garboard_share_link(${tokenHash})`;
  return rows[0] ?? null;
}

/** The share link whose opening this is, while it may be read on; null when there is none. */
export async function findShareViewing(
  tx: Tx,
  { id, tokenHash }: { id: string; tokenHash: string },
): Promise<{ share_link_id: string; firm_id: string; opened_at: Date; expires_at: Date } | null> {
  const rows = await tx.$queryRaw<
    { share_link_id: string; firm_id: string; opened_at: Date; expires_at: Date }[]
  >`SELECT * FROM garboard_share_viewing(${id}::uuid, ${tokenHash})`;
  return rows[0] ?? null;
}

/** Every firm of the installation; for the worker's sweeps. */
export async function allFirmIds(db: Database): Promise<string[]> {
  const rows = await db.prisma.$queryRaw<{ ids: string[] | null }[]>`SELECT garboard_all_firms() AS ids`;
  return rows[0]?.ids ?? [];
}

/** Widens the running transaction to every firm: for what a person has left with any, whoever may see it now. */
export async function widenToAll(tx: Tx): Promise<void> {
  const rows = await tx.$queryRaw<{ ids: string[] | null }[]>`SELECT garboard_all_firms() AS ids`;
  await widen(tx, rows[0]?.ids ?? []);
}

/** Every firm that has a record of events, those whose own row is gone among them. */
export async function recordFirmIds(db: Database): Promise<string[]> {
  const rows = await db.prisma.$queryRaw<{ ids: string[] | null }[]>`SELECT garboard_record_firms() AS ids`;
  return rows[0]?.ids ?? [];
}

/** Whether any row, of any firm, still names the object with this hash, or all are held for a copy under way. */
export async function objectInUse(tx: Tx, sha256: string): Promise<boolean> {
  const rows = await tx.$queryRaw<{ used: boolean }[]>`
    SELECT garboard_store_held() OR garboard_object_in_use(${sha256}) AS used`;
  return rows[0]?.used ?? true;
}

/** Those of these objects that no row of any firm names; none while all are held. */
export async function unnamedAmong(tx: Tx, hashes: readonly string[]): Promise<string[]> {
  const rows = await tx.$queryRaw<{ sha256: string }[]>`
    SELECT sha256 FROM unnest(${[...hashes]}::text[]) AS listed (sha256)
    WHERE NOT (SELECT garboard_store_held()) AND NOT garboard_object_in_use(sha256)`;
  return rows.map(({ sha256 }) => sha256);
}

/** What anybody may learn of an issued document; `later` is the newest revision that has replaced it. */
export interface VerifiedRow {
  firm_name: string;
  kind: string;
  revision: number;
  issued_at: Date;
  sha256: string;
  later_revision: number | null;
  later_issued_at: Date | null;
}

/** The issued document, of any firm, with this code or this hash; null when there is none. */
export async function verifiedDocument(
  tx: Tx,
  { code, sha256 }: { code?: string; sha256?: string },
): Promise<VerifiedRow | null> {
  const rows = await tx.$queryRaw<VerifiedRow[]>`
    SELECT * FROM garboard_verify(${code ?? null}::text, ${sha256 ?? null}::text)`;
  return rows[0] ?? null;
}

/** Whose calendar it is, and which firms that person is entitled to touch. */
export interface CalendarOwner {
  person_id: string;
  name: string;
  email: string;
  memberships: { firmId: string; role: string }[];
  firm_ids: string[];
}

/** Whose calendar is asked for by its secret address; notes that it was read. Null when there is none. */
export async function findCalendarOwner(
  db: Database,
  tokenHash: string,
  at: Date,
): Promise<CalendarOwner | null> {
  const rows = await db.prisma.$queryRaw<CalendarOwner[]>`
    SELECT * FROM garboard_calendar_feed(${tokenHash}, ${at}::timestamptz)`;
  return rows[0] ?? null;
}
