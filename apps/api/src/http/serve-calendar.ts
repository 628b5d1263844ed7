import { type Route, routes } from '@garboard/contract/routes';
import { type PersonActor, sightOf } from '@garboard/core/access/actor';
import { hashToken } from '@garboard/core/people/tokens';
import { notFound } from '@garboard/core/problems';
import { readCalendar } from '@garboard/core/visits/read-calendar';
import { inTransaction } from '@garboard/db/database';
import { findCalendarOwner } from '@garboard/db/special-reads';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { FastifyInstance } from 'fastify';
import type { Deps } from './deps.ts';
import { contextOf, fastifyPath } from './serve.ts';

/** Serves calendars by their secret addresses: whoever has one sees the visits of the person who made it. */
export function serveCalendar(app: FastifyInstance, deps: Deps): void {
  const route: Route = routes.readCalendar;
  app.served.names.add('readCalendar');
  app.route<{ Params: { token: string } }>({
    method: route.method,
    url: fastifyPath(route),
    schema: { params: route.params },
    config: { route },
    // The address is the secret: it must not be kept where logs are read.
    logLevel: 'warn',
    handler: async (request, reply) => {
      const row = await findCalendarOwner(deps.db, hashToken(request.params.token), deps.clock());
      if (!row) throw notFound('calendar');
      const person: PersonActor = {
        kind: 'person',
        personId: row.person_id,
        name: row.name,
        email: row.email,
        memberships: row.memberships.map((m) => ({ firmId: m.firmId, role: m.role as FirmRole })),
        firmIds: row.firm_ids,
      };
      const { publicUrl } = deps.env;
      const text = await inTransaction(deps.db, sightOf(person), (tx) =>
        readCalendar({ ...contextOf(deps, request, tx), actor: person }, { person, publicUrl }),
      );
      reply.header('content-type', 'text/calendar; charset=utf-8');
      reply.header('x-content-type-options', 'nosniff');
      reply.header('content-disposition', 'attachment; filename="visits.ics"');
      return reply.code(route.status).send(text);
    },
  });
}
