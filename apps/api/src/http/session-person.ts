import type { PersonActor } from '@garboard/core/access/actor';
import { idleDays, sessionDays } from '@garboard/core/people/start-session';
import { type SessionRow, touchSession } from '@garboard/db/special-reads';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';

const dayMs = 86_400_000;
/** A session's last use is written down this often at most. */
const touchMs = 5 * 60_000;

/** The person whose session this is. */
export const personOf = (row: SessionRow): PersonActor => ({
  kind: 'person',
  personId: row.person_id,
  name: row.name,
  email: row.email,
  memberships: row.memberships.map((m) => ({ firmId: m.firmId, role: m.role as FirmRole })),
  firmIds: row.firm_ids,
});

/** Notes that a session was used, unless that was noted of late. */
export async function noteUse(
  request: FastifyRequest,
  deps: Deps,
  tokenHash: string,
  lastSeen: Date,
): Promise<void> {
  const now = deps.clock();
  if (now.getTime() - lastSeen.getTime() <= touchMs) return;
  const lives = { idleMs: idleDays * dayMs, longestMs: sessionDays * dayMs };
  await touchSession(deps.db, { tokenHash, address: request.ip, now, ...lives });
}
