import { type Route, type RouteName, routes } from '@garboard/contract/routes';
import { buildJpeg } from '@garboard/seed/builders';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { type Caller, startServer, type TestServer } from '../support/server.ts';
import { type NamingField, namingFields } from './named-ids.ts';
import { buildNamedFirm, buildNamedPlace, type NamedFirm, type NamedPlace } from './named-ids-world.ts';
import { undone } from './undone.ts';

// Ids inside bodies. Each field that names a record is first sent what is right, by every role, to learn who may send
// it at all; these then name the like of another survey of the firm and of another firm's, which must be refused and
// leave the whole database as it was.

/** Every field of a schema that holds an id: by its form, or because it is called so. */
function idFields(schema: z.core.$ZodType | undefined, at = '', seen = new Set<unknown>()): string[] {
  if (!schema || seen.has(schema)) return [];
  const within = new Set(seen).add(schema);
  const of = (inner: z.core.$ZodType, path = at) => idFields(inner, path, within);
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'string') return 'format' in def && def.format === 'uuid' ? [at] : [];
  if (def.type === 'object') {
    return Object.entries(def.shape).flatMap(([key, field]) => {
      const found = of(field, `${at}/${key}`);
      const called = /(^id|Ids?)$/.test(key) && found.length === 0 ? [`${at}/${key}`] : [];
      return [...found, ...called];
    });
  }
  if (def.type === 'array') return of(def.element, `${at}/*`);
  if (def.type === 'pipe') return [...of(def.in), ...of(def.out)];
  if (def.type === 'union') return def.options.flatMap((option) => of(option));
  if (def.type === 'record') return of(def.valueType, `${at}/*`);
  return 'innerType' in def ? of(def.innerType as z.core.$ZodType) : [];
}

let server: TestServer;
let pg: Client;
let undoing = false;
let firm: NamedFirm;
let own: NamedPlace;
/** The sum of all before anything was asked. */
let untouched: string;
let others: { name: string; place: NamedPlace; firmWide: boolean }[];
beforeAll(async () => {
  server = await startServer({ wrap: (db) => undone(db, () => undoing) });
  firm = await buildNamedFirm(server);
  const other = await buildNamedFirm(server);
  own = await buildNamedPlace(server, firm, 100);
  others = [
    { name: 'another survey’s', place: await buildNamedPlace(server, firm, 200), firmWide: false },
    { name: 'another firm’s', place: await buildNamedPlace(server, other, 300), firmWide: true },
  ];
  pg = new Client({ connectionString: server.databaseUrl });
  await pg.connect();
  untouched = await sumOfAll();
}, 300_000);
afterAll(async () => {
  await pg?.end();
  await server?.close();
});

/** A sum over all that is kept, but for who was seen when and files to be collected because nothing names them. */
async function sumOfAll(): Promise<string> {
  const passing = new Set(['attempt_counts', 'sessions', '_prisma_migrations', 'catalogue_words']);
  const { rows } = await pg.query<{ name: string }>(
    "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE' ORDER BY 1",
  );
  const tables = rows.map(({ name }) => name).filter((name) => !passing.has(name));
  const sums = tables.map((name) => {
    const less = name === 'outbox' ? "WHERE job <> 'object.collect'" : '';
    return `SELECT '${name}' AS name, md5(coalesce(string_agg(md5(t::text), '' ORDER BY md5(t::text)), '')) AS sum FROM "${name}" t ${less}`;
  });
  const found = await pg.query<{ name: string; sum: string }>(sums.join(' UNION ALL '));
  return found.rows
    .map(({ name, sum }) => `${name} ${sum}`)
    .sort()
    .join('\n');
}

const people = ['principal', 'surveyor', 'office', 'owner', 'insurer', 'yard'] as const;
const jpeg = buildJpeg(77, { width: 40, height: 30 });

async function send(name: RouteName, field: NamingField, person: (typeof people)[number], id: string) {
  const route: Route = routes[name];
  const place = own[field.of];
  const method = route.method.toLowerCase() as keyof Caller;
  let request = server.as(firm[person])[method](field.path(place));
  if (route.form) {
    request = request.attach('file', await jpeg, 'x.jpg');
    for (const [key, value] of Object.entries(field.body(id, place)))
      request = request.field(key, String(value));
  } else request = request.send(field.body(id, place));
  const { status, body } = await request;
  return { status, body };
}

/** Whether an answer is what naming somebody else’s record should come to. */
function isRefused(
  field: NamingField,
  status: number,
  body: { done?: unknown[]; refused?: unknown[] },
): boolean {
  if (field.oneByOne) return status === 200 && body.done?.length === 0 && body.refused?.length === 1;
  if (field.ignored || field.local) return status < 300;
  if (status === 409) return field.made === true;
  if (status === 403) return field.noun === 'firm';
  return status === 404 || status === 422;
}

let requests = 0;
describe('what a body names', () => {
  it('has a row for every field of every body and form', () => {
    const found = (Object.entries(routes) as [string, Route][]).flatMap(([name, { body, form }]) =>
      [...new Set([...idFields(body), ...idFields(form)])].map((field) => `${name} ${field}`),
    );
    const rows = Object.keys(namingFields);
    expect({
      missing: found.filter((f) => !rows.includes(f)),
      unknown: rows.filter((r) => !found.includes(r)),
    }).toEqual({
      ...{ missing: [], unknown: [] },
    });
  });

  it.each(Object.entries(namingFields))('%s', { timeout: 240_000 }, async (key, field) => {
    const name = key.split(' ')[0] as RouteName;
    const right = field.made ? null : own[field.of][field.noun];
    // A reviewer is somebody else than who asks and who signs.
    const reviewer = name === 'askReview' ? firm.principal.id : right;
    const made = '0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f';
    undoing = true;
    const tried = await Promise.all(
      people.map(async (person) => ({ person, ...(await send(name, field, person, reviewer ?? made)) })),
    );
    const able = tried.filter(({ status }) => status < 300).map(({ person }) => person);
    const cameTo = tried.map(({ person, status, body }) => `${person}: ${status} ${body.detail ?? ''}`);
    expect(able, `somebody may send it: ${cameTo.join('; ')}`).not.toEqual([]);

    undoing = field.local === true;
    const wrong: string[] = [];
    await Promise.all(
      able.flatMap((person) =>
        others.map(async ({ name: whose, place, firmWide }) => {
          if (!firmWide && (field.firmWide || field.oneByOne)) return;
          const { status, body } = await send(name, field, person, place[field.of][field.noun]);
          requests++;
          if (isRefused(field, status, body)) return;
          wrong.push(`${person} names ${whose}: ${status} ${JSON.stringify(body).slice(0, 200)}`);
        }),
      ),
    );
    undoing = false;
    expect(wrong).toEqual([]);
    expect(await sumOfAll()).toBe(untouched);
  });
});

describe('what a query names', () => {
  const named: Record<string, keyof NamedPlace['draft']> = {
    ...{
      firmId: 'firm',
      vesselId: 'vessel',
      surveyId: 'survey',
      surveyorId: 'surveyor',
      findingId: 'finding',
    },
  };
  const queries = (Object.entries(routes) as [RouteName, Route][]).flatMap(([name, route]) =>
    route.method === 'GET'
      ? idFields(route.query).map((field) => ({ name, route, field: field.slice(1) }))
      : [],
  );
  it.each(queries)('$name ?$field', async ({ name, route, field }) => {
    const noun = named[field];
    if (!noun) throw new Error(`What ${field} of ${name} names isn't known: add it.`);
    const path = route.path.replace('{id}', own.issued.survey).replace('{key}', 'hull-x');
    const foreign = others[1]?.place.issued[noun] ?? '';
    for (const person of people) {
      const { status, body, text } = await server.as(firm[person]).get(`${path}?${field}=${foreign}`);
      const empty = Array.isArray(body.items) ? body.items.length === 0 : text.split('\r\n').length <= 2;
      expect({ person, fine: [403, 404, 422].includes(status) || (status === 200 && empty) }).toEqual({
        ...{ person, fine: true },
      });
    }
  });
});

describe('what the OpenAPI document doesn’t describe', () => {
  const described = new Map<string, Set<string>>();
  for (const route of Object.values(routes) as Route[]) {
    described.set(route.path, (described.get(route.path) ?? new Set()).add(route.method));
  }
  it('answers no method of any address but those described', { timeout: 240_000 }, async () => {
    const { paths = {} } = (await server.as(null).get('/openapi.json').expect(200)).body;
    expect(Object.keys(paths).sort()).toEqual([...described.keys()].sort());
    const wrong: string[] = [];
    for (const [path, item] of Object.entries(paths as Record<string, object>)) {
      const address = path.replace(/\{\w+\}/g, own.issued.survey);
      for (const method of ['get', 'post', 'put', 'patch', 'delete'] as const) {
        if (method in item) continue;
        const { status } = await server.as(firm.principal)[method](address);
        requests++;
        // Another route may have the address: `/v1/sessions/{id}` for `/v1/sessions/current`.
        const own404 = status === 404 || status === 405;
        if (!own404) wrong.push(`${method} ${path}: ${status}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(await sumOfAll()).toBe(untouched);
    console.log(`Named ids: ${requests} requests`);
  });
});
