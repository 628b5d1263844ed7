import type { Database, Tx } from './database.ts';

/** Who a session belongs to and which firms that person is entitled to touch. */
export interface SessionRow {
  person_id: string;
  name: string;
  email: string;
  memberships: { firmId: string; role: string }[];
  firm_ids: string[];
}

/** The person behind an unexpired session, in one round trip; null when there is none. */
export async function findSession(db: Database, tokenHash: string): Promise<SessionRow | null> {
  const rows = await db.prisma.$queryRaw<SessionRow[]>`SELECT * FROM garboard_session(${tokenHash})`;
  return rows[0] ?? null;
}

/** Every firm of the installation; for the worker's sweeps. */
export async function allFirmIds(db: Database): Promise<string[]> {
  const rows = await db.prisma.$queryRaw<{ ids: string[] | null }[]>`SELECT garboard_all_firms() AS ids`;
  return rows[0]?.ids ?? [];
}

/** Whether any row, of any firm, still names the object with this hash. */
export async function objectInUse(tx: Tx, sha256: string): Promise<boolean> {
  const rows = await tx.$queryRaw<{ used: boolean }[]>`SELECT garboard_object_in_use(${sha256}) AS used`;
  return rows[0]?.used ?? true;
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
