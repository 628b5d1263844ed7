import type { Sight } from './database.ts';
import { Prisma } from './generated/client.ts';

/** Whoever is a party to surveys works under this role: that of the application and the policies for parties. */
const partyRole = 'garboard_person';

/** Columns of a SELECT that bind the running transaction to a sight; with `readOnly`, nothing can be written in it any more. */
export function bindings(sight: Sight, { readOnly = false } = {}): Prisma.Sql {
  const firms = sight.firmIds.join(',');
  const key = sight.key ? `${sight.key.firmId}:${sight.key.role}` : '';
  const role = sight.asParty ? Prisma.sql`, set_config('role', ${partyRole}, true)` : Prisma.empty;
  const only = readOnly ? Prisma.sql`, set_config('transaction_read_only', 'on', true)` : Prisma.empty;
  return Prisma.sql`set_config('app.firm_ids', ${firms}, true),
    set_config('app.person_id', ${sight.personId ?? ''}, true), set_config('app.key', ${key}, true)${role}${only}`;
}

/** The statement that binds the running transaction to a sight. */
export const bindingTo = (sight: Sight): Prisma.Sql => Prisma.sql`SELECT ${bindings(sight)}`;
