import fc from 'fast-check';

const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 ? [value] : { a: value };
  return value;
};

/** An object with a key of its own that programs take for its prototype. */
const withProto = (): unknown =>
  JSON.parse('{"__proto__":{"admin":true},"constructor":{"prototype":{"x":1}}}');

/** Values that are wrong in most places, or at the edge of right. */
export const oddValues: readonly unknown[] = [
  ...[
    null,
    true,
    false,
    0,
    -0,
    1,
    -1,
    0.5,
    1e308,
    -1e308,
    5e-324,
    2 ** 31,
    -(2 ** 31) - 1,
    2 ** 53,
    -(2 ** 63),
  ],
  ...['', ' ', '\n', '\u0000', 'a\u0000b', '\ud800', '\udc00x', 'x\ud83d', '\u202eabc', '\ufeff', '\u0007'],
  ...['NaN', 'Infinity', '-0', '1e999', '0x10', 'null', 'undefined', 'true', '[object Object]'],
  ...[
    '0000-01-01',
    '0000-00-00',
    '9999-12-31',
    '-000001-01-01',
    '+275760-09-13',
    '2026-02-30',
    '10000-01-01',
  ],
  ...['0000-01-01T00:00:00Z', '+275760-09-13T00:00:00.000Z', '2026-01-01T25:00:00Z', '9999-12-31T23:59:60Z'],
  ...[
    '../../etc/passwd',
    'file:///etc/passwd',
    "' OR 1=1 --",
    '%00',
    '\\u0000',
    '%{jndi:x}',
    '<svg onload=x>',
  ],
  ...['x'.repeat(50_000), '💥'.repeat(3000), 'a\u0301'.repeat(3000)],
  ...[[], {}, [null], [[]], nested(40), Array.from({ length: 3000 }, (_, i) => i), withProto()],
];

export const oddValue: fc.Arbitrary<unknown> = fc.constantFrom(...oddValues);

/** Every place within a value, the value itself among them. */
function pathsOf(value: unknown, at: readonly string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [[...at]];
  return [[...at], ...Object.entries(value).flatMap(([key, part]) => pathsOf(part, [...at, key]))];
}

type Change =
  | { kind: 'put'; value: unknown }
  | { kind: 'drop' }
  | { kind: 'add'; key: string; value: unknown };

function changed(value: unknown, [key, ...rest]: readonly string[], change: Change): unknown {
  if (key === undefined) {
    if (change.kind === 'put') return change.value;
    if (change.kind === 'drop' || typeof value !== 'object' || value === null) return value;
    const wider = Array.isArray(value) ? [...value, change.value] : { ...value };
    // Defined, since an assignment to `__proto__` would be something else.
    if (!Array.isArray(wider)) {
      Object.defineProperty(wider, change.key, { value: change.value, enumerable: true, configurable: true });
    }
    return wider;
  }
  if (Array.isArray(value)) {
    if (rest.length === 0 && change.kind === 'drop') return value.filter((_, i) => String(i) !== key);
    return value.map((part: unknown, i) => (String(i) === key ? changed(part, rest, change) : part));
  }
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value);
  if (rest.length === 0 && change.kind === 'drop')
    return Object.fromEntries(entries.filter(([k]) => k !== key));
  return Object.fromEntries(entries.map(([k, part]) => [k, k === key ? changed(part, rest, change) : part]));
}

const change: fc.Arbitrary<Change> = fc.oneof(
  { weight: 6, arbitrary: oddValue.map((value) => ({ kind: 'put' as const, value })) },
  { weight: 2, arbitrary: fc.constant({ kind: 'drop' as const }) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom('__proto__', 'constructor', 'toString', 'id', 'firmId', 'version', 'x', ''),
        oddValue,
      )
      .map(([key, value]) => ({ kind: 'add' as const, key, value })),
  },
);

/** A value with one thing about it changed: something else in one of its places, a part left out, a part too many. */
export const spoilt = (values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc.tuple(values, fc.nat(), change).map(([value, at, how]) => {
    const paths = pathsOf(value);
    return changed(value, paths[at % paths.length] ?? [], how);
  });
