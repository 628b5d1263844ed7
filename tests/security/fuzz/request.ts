import { type Route, type RouteName, routes } from '@garboard/contract/routes';
import { inputSchema } from '@garboard/trade/worksheets/core/evaluate';
import { worksheets } from '@garboard/trade/worksheets/registry';
import fc from 'fast-check';
import { bodies } from '../../isolation/bodies.ts';
import { days, fromSchema } from './from-schema.ts';
import { oddValue, oddValues, spoilt } from './spoil.ts';

/**
 * A request as it is to be sent. Wherever `@own.findings@` stands the id of that record of the world is put in, so that
 * a request printed in one run can be made in another.
 */
export interface Asked {
  route: RouteName;
  /** A name of the world's askers, or `nobody`, or `a made-up token`. */
  who: string;
  /** How they say who they are. */
  by: 'bearer' | 'cookie';
  path: string;
  /** A value that begins with `key:` is sent as the cursor of that key. */
  query: [string, string][];
  headers: Record<string, string>;
  body: SentBody;
}
export type SentBody =
  | { kind: 'none' }
  | { kind: 'json'; value: unknown }
  /** Bytes as Latin-1. */
  | { kind: 'raw'; text: string; type: string | null }
  | { kind: 'form'; fields: Record<string, string>; files: { name: string; content: string }[] };

/** What the world offers: names of people, of places with their nouns, and keys of cursors by route. */
export interface Offer {
  askers: readonly string[];
  ids: Record<string, readonly string[]>;
  cursors: Partial<Record<RouteName, readonly string[]>>;
}

const madeUp = ['0199f2a4-7b1e-7c40-9a51-0b6f1c2d3e4f', '00000000-0000-0000-0000-000000000000'];
/** Parts of a path that name nothing, as they are sent. */
const malformed = [
  ...['nope', '1', '-1', '%00', '%0a', '..', '%2e%2e%2f%2e%2e', '%252e', '%FF%FE', '%ED%A0%80', '%zz', '%'],
  ...['%7Bid%7D', 'null', '__proto__', 'x'.repeat(90), 'x'.repeat(3000), '%E2%80%AE', '*', "'", '0199f2a4'],
];

function idsOf(offer: Offer): fc.Arbitrary<string> {
  const real = Object.entries(offer.ids).flatMap(([place, nouns]) =>
    nouns.map((noun) => `@${place}.${noun}@`),
  );
  return fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom(...real) },
    { weight: 1, arbitrary: fc.uuid({ version: 7 }) },
    { weight: 1, arbitrary: fc.constantFrom(...madeUp) },
  );
}

/** The address with something for each parameter, mostly records of the noun that the path is about. */
function paths(name: RouteName, route: Route, offer: Offer): fc.Arbitrary<string> {
  const noun = route.path.split('/')[2] ?? '';
  const parameters = [...route.path.matchAll(/\{(\w+)\}/g)].map(([, parameter]) => parameter ?? '');
  const other = idsOf(offer);
  const values = parameters.map((parameter) => {
    const fitting = Object.entries(offer.ids).flatMap(([place, nouns]) =>
      [name, `${name}.${parameter}`, ...(parameter === 'id' || parameter === 'key' ? [noun] : [parameter])]
        .filter((key) => nouns.includes(key))
        // Another firm's now and then: it isn't there for most who ask.
        .flatMap((key) => Array.from({ length: place === 'other' ? 1 : 4 }, () => `@${place}.${key}@`)),
    );
    const known: string[] =
      { system: ['hull', 'gas'], kind: worksheets.map((w) => w.kind) }[parameter] ?? fitting;
    const field = (route.params?.shape as Record<string, Parameters<typeof fromSchema>[0]> | undefined)?.[
      parameter
    ];
    return fc.oneof(
      { weight: 24, arbitrary: known.length > 0 ? fc.constantFrom(...known) : other },
      { weight: 1, arbitrary: other },
      { weight: 1, arbitrary: fc.constantFrom(...malformed) },
      { weight: 1, arbitrary: field ? fromSchema(field, other).map((v) => encode(String(v))) : other },
    );
  });
  return fc
    .tuple(...values)
    .map((chosen) =>
      parameters.reduce(
        (path, parameter, i) => path.replace(`{${parameter}}`, () => chosen[i] ?? ''),
        route.path,
      ),
    );
}

const encode = (value: string): string =>
  encodeURIComponent(value.replace(/\p{Cs}/gu, '?')).replaceAll('%40', '@');

function queries(name: RouteName, route: Route, offer: Offer): fc.Arbitrary<[string, string][]> {
  const stray = fc.constantFrom<[string, string]>(
    ['x', '1'],
    ['__proto__', 'x'],
    ['limit[]', '1'],
    ['', ''],
    ['cursor', '%'],
  );
  if (!route.query)
    return fc.oneof(
      { weight: 9, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(stray, { maxLength: 2 }) },
    );
  const listed = fromSchema(route.query, idsOf(offer)).map((value) =>
    Object.entries(value as Record<string, unknown>)
      .filter(([, part]) => part !== undefined)
      .map(([key, part]): [string, string] => [key, Array.isArray(part) ? part.join(',') : String(part)]),
  );
  const asked = listed.chain((entries) => fc.subarray(entries));
  const keys = Object.keys(route.query.shape);
  const odd = fc
    .tuple(fc.constantFrom(...keys), oddValue)
    .map(([key, value]): [string, string] => [key, String(value)]);
  const cursors = offer.cursors[name] ?? [];
  const cursor = cursors.length > 0 ? fc.constantFrom(...cursors).chain(nearCursor) : fc.constant('key:x');
  return fc.oneof(
    { weight: 5, arbitrary: asked },
    {
      weight: 3,
      arbitrary: fc
        .tuple(asked, odd)
        .map(([entries, one]) => [...entries.filter(([k]) => k !== one[0]), one]),
    },
    {
      weight: 1,
      arbitrary: fc.tuple(asked, odd, stray).map(([entries, one, more]) => [...entries, one, more]),
    },
    {
      weight: 2,
      arbitrary: fc
        .tuple(asked, cursor)
        .map(([entries, key]): [string, string][] => [
          ...entries.filter(([k]) => k !== 'cursor'),
          ['cursor', key],
        ]),
    },
  );
}

/** A cursor's key as the list gave it, or with a digit or a part of it changed. */
const nearCursor = (key: string): fc.Arbitrary<string> =>
  fc.oneof(
    fc.constant(`key:${key}`),
    fc
      .tuple(fc.nat(Math.max(0, key.length - 1)), fc.constantFrom('9', '0', '-', '\u0000', 'x', ''))
      .map(([at, char]) => `key:${key.slice(0, at)}${char}${key.slice(at + 1)}`),
    fc.tuple(days, fc.constantFrom(...madeUp)).map(([day, id]) => `key:${day}${key.slice(10, 11)}${id}`),
  );

const headerSets: fc.Arbitrary<Record<string, string>> = fc.oneof(
  { weight: 12, arbitrary: fc.constant({}) },
  {
    weight: 2,
    arbitrary: fc.constantFrom('"1"', '"2"', '"0"', 'W/"1"', '*').map((v) => ({ 'if-match': v })),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('1', '"x"', '"999999999"', '"1","2"', '""', '"-1"', 'x'.repeat(3000))
      .map((v) => ({ 'if-match': v })),
  },
  {
    weight: 2,
    arbitrary: fc
      .constantFrom('k', 'a second', 'x'.repeat(200), 'x'.repeat(201), 'é\u0080', '\t', "'", '__proto__')
      .map((v) => ({ 'idempotency-key': v })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('bytes=0-1', 'bytes=-1', 'bytes=9-1', 'x').map((v) => ({ range: v })),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom(
        'null',
        'https://elsewhere.example',
        'http://127.0.0.1:3000',
        '://',
        'file://',
        'http://[',
        ' ',
      )
      .map((v) => ({ origin: v })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Record<string, string>>(
      { accept: 'text/html' },
      { 'if-none-match': '*' },
      { 'accept-language': 'xx-\u00ff' },
      { 'user-agent': '' },
      { 'user-agent': '\u00e9'.repeat(4000) },
      { 'x-forwarded-for': 'not an address, ::1' },
      { 'x-http-method-override': 'DELETE' },
      { 'accept-encoding': 'zstd;q=9' },
      { expect: '100-continue' },
      { cookie: 'garboard_session=%00; __proto__=1; =;' },
      { authorization: 'Basic AAAA' },
      { 'content-encoding': 'gzip' },
    ),
  },
);

const byKind = new Map(worksheets.map((worksheet) => [worksheet.kind, inputSchema(worksheet)]));

/** Inputs of worksheets as their own kinds describe them, which the contract leaves open. */
const worksheetInputs = (ids: fc.Arbitrary<string>): fc.Arbitrary<{ kind: string; inputs: unknown }> =>
  fc
    .constantFrom(...byKind)
    .chain(([kind, schema]) => fc.record({ kind: fc.constant(kind), inputs: fromSchema(schema, ids) }));

function goodBodies(name: RouteName, route: Route, ids: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  const body = route.body;
  if (!body) return fc.constant({});
  const made = fromSchema(body, ids);
  const sample = bodies[name];
  // Ids of a sample's are those of the place it is asked of.
  const named = new Proxy({}, { get: (_, noun) => `@own.${String(noun)}@` });
  const fixed = typeof sample === 'function' ? sample(named) : sample;
  const all = [{ weight: 3, arbitrary: made }];
  if (fixed) {
    all.push({ weight: 3, arbitrary: fc.constant<unknown>(fixed) });
    all.push({ weight: 3, arbitrary: made.map((m) => ({ ...fixed, ...pickOne(m) })) });
  }
  if (name === 'createWorksheet' || name === 'updateWorksheet' || name === 'evaluateWorksheet') {
    const sheets = worksheetInputs(ids).map(({ kind, inputs }) =>
      name === 'createWorksheet' ? { kind, inputs } : { inputs },
    );
    all.push({ weight: 9, arbitrary: sheets });
  }
  return fc.oneof(...all);
}

/** One of the parts of an object, the same for the same object. */
function pickOne(value: unknown): Record<string, unknown> {
  const entries = Object.entries((value ?? {}) as Record<string, unknown>);
  const size = JSON.stringify(entries)?.length ?? 0;
  const one = entries[size % Math.max(1, entries.length)];
  return one ? { [one[0]]: one[1] } : {};
}

const rubbish: readonly Extract<SentBody, { kind: 'raw' }>[] = [
  ...[
    '{',
    '',
    ' ',
    'null',
    '[]',
    '"x"',
    '{"a":1,}',
    '{"a":NaN}',
    '{"a":-0,"b":1e999}',
    '\ufeff{}'.slice(1),
    '{"a":1}{"b":2}',
  ].map((text) => ({ kind: 'raw' as const, text, type: 'application/json' })),
  { kind: 'raw', text: `${'['.repeat(60_000)}${']'.repeat(60_000)}`, type: 'application/json' },
  { kind: 'raw', text: `{"a":${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}}`, type: 'application/json' },
  { kind: 'raw', text: '{"title":"\xff\xfe\xc3\x28"}', type: 'application/json' },
  { kind: 'raw', text: '{"title":"\xed\xa0\x80"}', type: 'application/json; charset=utf-8' },
  { kind: 'raw', text: '{}', type: 'application/json; charset=utf-16' },
  { kind: 'raw', text: '{"__proto__":{"a":1}}', type: 'application/json' },
  { kind: 'raw', text: '{"constructor":{"prototype":{"a":1}}}', type: 'application/json' },
  { kind: 'raw', text: '{"a":1}', type: 'text/plain' },
  { kind: 'raw', text: 'a=1&b=2', type: 'application/x-www-form-urlencoded' },
  { kind: 'raw', text: '<a/>', type: 'application/xml' },
  { kind: 'raw', text: '{}', type: 'application/json\t;;' },
  { kind: 'raw', text: '{}', type: 'x' },
  { kind: 'raw', text: '{}', type: null },
  { kind: 'raw', text: '--b\r\n\r\n', type: 'multipart/form-data; boundary=b' },
  { kind: 'raw', text: 'x', type: 'multipart/form-data' },
  {
    kind: 'raw',
    text: '--b\r\nContent-Disposition: form-data; name="file"; filename="a"\r\n\r\nabc',
    type: 'multipart/form-data; boundary=b',
  },
  {
    kind: 'raw',
    text: '--b\r\nContent-Disposition: form-data; name="__proto__"\r\n\r\nx\r\n--b--\r\n',
    type: 'multipart/form-data; boundary=b',
  },
  { kind: 'raw', text: 'x'.repeat(2_200_000), type: 'application/json' },
  { kind: 'raw', text: 'bytes', type: 'application/offset+octet-stream' },
];

/** By name of what `ask.ts` has ready, or the bytes themselves. */
const contents = [
  'jpeg',
  'png',
  'pdf',
  '',
  'text',
  '%PDF-1.7\n',
  '\xff\xd8\xff\xe0',
  'GIF89a<script>',
  'PK\u0003\u0004',
];
const fileNames = [
  'a.jpg',
  '../../etc/passwd',
  'a\u202egpj.exe',
  '',
  'x'.repeat(10_000),
  'a"b;c\r\nd',
  'é.pdf',
  '.',
  'con',
];

function formBodies(route: Route, ids: fc.Arbitrary<string>, name: RouteName): fc.Arbitrary<SentBody> {
  const form = route.form;
  if (!form) return fc.constant({ kind: 'none' });
  const good = fc.oneof(fromSchema(form, ids), fc.constant<unknown>(bodies[name] ?? {}));
  const fields = fc
    .oneof({ weight: 3, arbitrary: good }, { weight: 2, arbitrary: spoilt(good) })
    .map((value) =>
      Object.fromEntries(
        Object.entries((typeof value === 'object' ? value : null) ?? {}).map(([key, part]) => [
          key,
          typeof part === 'string' ? part : (JSON.stringify(part) ?? ''),
        ]),
      ),
    );
  const file = fc.record({ name: fc.constantFrom(...fileNames), content: fc.constantFrom(...contents) });
  const files = fc.array(file, { maxLength: 2 });
  return fc.record({ kind: fc.constant('form' as const), fields, files });
}

function sentBodies(name: RouteName, route: Route, ids: fc.Arbitrary<string>): fc.Arbitrary<SentBody> {
  const raw = { weight: 1, arbitrary: fc.constantFrom<SentBody>(...rubbish) };
  if (route.form) return fc.oneof({ weight: 8, arbitrary: formBodies(route, ids, name) }, raw);
  if (route.part) {
    const part = fc.constantFrom('', 'x', 'x'.repeat(5000), 'x'.repeat(1_100_000));
    const sent = part.map((text) => ({
      kind: 'raw' as const,
      text,
      type: 'application/offset+octet-stream',
    }));
    return fc.oneof({ weight: 8, arbitrary: sent }, raw);
  }
  const json = (value: unknown): SentBody => ({ kind: 'json', value });
  if (!route.body) {
    const none = { weight: 12, arbitrary: fc.constant<SentBody>({ kind: 'none' }) };
    return fc.oneof(none, raw, { weight: 1, arbitrary: oddValue.map(json) });
  }
  const good = goodBodies(name, route, ids);
  return fc.oneof(
    { weight: 5, arbitrary: good.map(json) },
    { weight: 6, arbitrary: spoilt(good).map(json) },
    { weight: 2, arbitrary: spoilt(spoilt(good)).map(json) },
    { weight: 1, arbitrary: fc.constantFrom(...oddValues).map(json) },
    raw,
  );
}

/** Requests at one route: as it describes them, nearly so, and rubbish. */
export function requestsAt(name: RouteName, offer: Offer): fc.Arbitrary<Asked> {
  const route: Route = routes[name];
  const ids = idsOf(offer);
  const offsets = fc
    .constantFrom('0', '5000', '1', '-1', '999999999999', 'x', '0x1')
    .map((v) => ({ 'upload-offset': v }));
  const headers = route.part ? fc.tuple(headerSets, offsets).map(([a, b]) => ({ ...a, ...b })) : headerSets;
  return fc.record({
    route: fc.constant(name),
    // Staff more often than others: they may do more, so that more of what was written is reached.
    who: fc.oneof(
      { weight: 8, arbitrary: fc.constantFrom('principal', 'principal', 'surveyor', 'surveyor', 'office') },
      { weight: 6, arbitrary: fc.constantFrom(...offer.askers) },
      { weight: 1, arbitrary: fc.constantFrom('nobody', 'a made-up token') },
    ),
    by: fc.oneof(
      { weight: 5, arbitrary: fc.constant('bearer' as const) },
      { weight: 1, arbitrary: fc.constant('cookie' as const) },
    ),
    path: paths(name, route, offer),
    query: queries(name, route, offer),
    headers,
    body: sentBodies(name, route, ids),
  });
}
