import type { PersonActor } from '@garboard/core/access/actor';
import { idleDays, sessionDays } from '@garboard/core/people/start-session';
import { type SessionRow, touchSession } from '@garboard/db/special-reads';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';

const dayMs = 86_400_000;
/** A session's last use is written down this often at most. */
const touchMs = 5 * 60_000;

const listOf = (text: string): string[] => (text ? text.split(',').sort() : []);

/** The person whose session this is. */
export function personOf(row: SessionRow): PersonActor {
  const memberships = listOf(row.memberships).map((one) => {
    const [firmId = '', role = ''] = one.split(':');
    return { firmId, role: role as FirmRole };
  });
  const firms = new Set([...memberships.map(({ firmId }) => firmId), ...listOf(row.part_in)]);
  return {
    kind: 'person',
    personId: row.person_id,
    name: row.name,
    email: row.email,
    memberships,
    firmIds: [...firms].sort(),
  };
}

/** All that `personOf` reads, as a text: two rows that have the same are of the same person with the same rights. */
export const factsOf = (row: SessionRow): string =>
  `${row.person_id} ${row.memberships} ${row.part_in} ${row.email} ${row.name}`;

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
