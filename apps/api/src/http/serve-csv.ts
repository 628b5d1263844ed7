import { Readable } from 'node:stream';
import { type Route, type RouteName, type Routes, routes } from '@garboard/contract/routes';
import { sightOf } from '@garboard/core/access/actor';
import type { Ctx } from '@garboard/core/context';
import { inTransaction } from '@garboard/db/database';
import { stringify } from 'csv-stringify';
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import type { Deps } from './deps.ts';
import { actorOf, contextOf, fastifyPath } from './serve.ts';
import { disposition } from './serve-bytes.ts';

type CsvRoute = {
  [N in RouteName]: Routes[N] extends { response: 'bytes'; query: z.ZodObject } ? N : never;
}[RouteName];

/** A list as lines of CSV: its headings, and how an item fills them. */
export interface CsvList<Query, Item> {
  /** Of the file, without the day and the ending. */
  name: string;
  columns: Record<string, (item: Item) => string | number | null>;
  page: (
    ctx: Ctx,
    query: Query,
    cursor: string | undefined,
  ) => Promise<{ items: Item[]; next: string | null }>;
}

/**
 * Registers a route that answers a whole list as CSV by RFC 4180: UTF-8 with a byte order mark, which spreadsheets
 * need, CRLF at line ends, and an apostrophe before what a spreadsheet would take for a formula. Each page is read in
 * a transaction of its own when the reader has taken the one before, so that a slow reader holds no connection.
 */
export function serveCsv<N extends CsvRoute, Item>(
  app: FastifyInstance,
  deps: Deps,
  name: N,
  list: CsvList<z.output<Routes[N]['query']>, Item>,
): void {
  const route: Route = routes[name];
  app.served.names.add(name);
  app.route({
    method: route.method,
    url: fastifyPath(route),
    schema: { querystring: route.query },
    config: { route },
    handler: async (request, reply) => {
      const query = request.query as z.output<Routes[N]['query']>;
      const read = (cursor: string | undefined) =>
        inTransaction(deps.db, sightOf(actorOf(request)), (tx) =>
          list.page(contextOf(deps, request, tx), query, cursor),
        );
      // The first page before anything is sent: what is refused is refused with its own status.
      const first = await read(undefined);
      const headings = Object.keys(list.columns);
      const fill = Object.values(list.columns);
      async function* lines() {
        yield headings;
        for (let page = first; ; page = await read(page.next)) {
          for (const item of page.items) yield fill.map((cell) => cell(item));
          if (page.next === null) return;
        }
      }
      // By itself it puts only the line ends of records into quotes, not those within a cell.
      const quoted = { quoted_match: /[\r\n]/ };
      const csv = stringify({ bom: true, record_delimiter: '\r\n', escape_formulas: true, ...quoted });
      const source = Readable.from(lines());
      source.on('error', (error) => csv.destroy(error));
      csv.on('close', () => source.destroy());
      reply.header('content-type', 'text/csv; charset=utf-8; header=present');
      reply.header('x-content-type-options', 'nosniff');
      const day = deps.clock().toISOString().slice(0, 10);
      reply.header('content-disposition', disposition('attachment', `${list.name}-${day}.csv`));
      return reply.code(route.status).send(source.pipe(csv));
    },
  });
}
