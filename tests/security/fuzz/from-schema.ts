import fc from 'fast-check';
import type { z } from 'zod';

/** What a text may be made of besides plain words: scripts, marks that turn writing round, and the edges of Unicode. */
const oddTexts = [
  'Ünïcödé – “quoted” ’s',
  'עברית \u202e and back \u202c',
  '船の点検 🛥️👨‍👩‍👧',
  '=1+1',
  "'; DROP TABLE surveys; --",
  '%_\\',
  '{{7*7}} #{7*7}',
  '<script>alert(1)</script>',
  '\uffff\ufdd0',
  'two\nlines\tand a tab',
  'e\u0301'.repeat(20),
  'constructor',
  '__proto__',
];

const text = fc.oneof(
  { weight: 4, arbitrary: fc.lorem({ maxCount: 6 }) },
  { weight: 2, arbitrary: fc.constantFrom(...oddTexts) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 40 }) },
);

const twoDigits = (n: number) => String(n).padStart(2, '0');

/** Days of the calendar, its edges among them. */
export const days = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(
        fc.integer({ min: 1990, max: 2100 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 28 }),
      )
      .map(([y, m, d]) => `${y}-${twoDigits(m)}-${twoDigits(d)}`),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('0000-01-01', '0001-01-01', '1582-10-10', '2024-02-29', '9999-12-31'),
  },
);

const instants = fc.oneof(
  { weight: 4, arbitrary: days.map((day) => `${day}T10:20:30Z`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '0000-01-01T00:00:00Z',
      '9999-12-31T23:59:59.999999999Z',
      '2026-06-30T23:59:59Z',
    ),
  },
);

interface Limits {
  minimum?: number;
  maximum?: number;
  format?: string;
  pattern?: RegExp;
}

/** What a schema says of lengths, sizes and form, in itself and in its checks. */
function limitsOf(schema: z.core.$ZodType): Limits {
  const { def } = schema._zod;
  const parts: Record<string, unknown>[] = [
    { ...def },
    ...(def.checks ?? []).map((check) => ({ ...check._zod.def })),
  ];
  const limits: Limits = {};
  for (const part of parts) {
    if (typeof part.format === 'string') limits.format = part.format;
    if (part.pattern instanceof RegExp) limits.pattern = part.pattern;
    if (part.check === 'min_length') limits.minimum = Number(part.minimum);
    if (part.check === 'max_length') limits.maximum = Number(part.maximum);
    if (part.check === 'greater_than') limits.minimum = Number(part.value);
    if (part.check === 'less_than') limits.maximum = Number(part.value);
  }
  return limits;
}

function strings(schema: z.core.$ZodType, ids: fc.Arbitrary<string>): fc.Arbitrary<string> {
  const limits = limitsOf(schema);
  switch (limits.format) {
    case 'uuid':
      return ids;
    case 'email':
      return fc.integer({ min: 0, max: 99 }).map((n) => `person${n}@fuzz.example`);
    case 'date':
      return days;
    case 'datetime':
      return instants;
    case 'url':
      return fc.constantFrom(
        'https://hook.example/',
        'http://127.0.0.1:9/',
        'https://[::1]/x',
        'https://a.example/?q=%00',
      );
    case 'base64':
      return fc.base64String({ maxLength: 64 });
  }
  if (limits.pattern) {
    try {
      return fc.stringMatching(limits.pattern);
    } catch {
      // A pattern that the library can't turn round: any text then.
    }
  }
  const { minimum = 0, maximum = 200 } = limits;
  const edge = fc.constantFrom(minimum, maximum).map((length) => 'x'.repeat(length));
  return fc.oneof(
    { weight: 8, arbitrary: text.map((s) => s.slice(0, maximum)) },
    { weight: 1, arbitrary: edge },
  );
}

function numbers(schema: z.core.$ZodType): fc.Arbitrary<number> {
  const { minimum: min = -1e15, maximum: max = 1e15, format } = limitsOf(schema);
  const whole = fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
  const edges = fc.constantFrom(min, max, 0, 1);
  if (format === 'safeint') return fc.oneof({ weight: 4, arbitrary: whole }, { weight: 1, arbitrary: edges });
  return fc.oneof(
    { weight: 3, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 2, arbitrary: whole },
    { weight: 1, arbitrary: edges },
  );
}

/**
 * Inputs that a schema describes, as they are sent, before it fills in defaults and mends texts. What only its own
 * functions refuse may be among them.
 *
 * @param ids what to give where an id is wanted
 */
export function fromSchema(schema: z.core.$ZodType, ids: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  const of = (inner: z.core.$ZodType) => fromSchema(inner, ids);
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object': {
      const entries = Object.entries(def.shape).filter(([, field]) => !isNever(field));
      const requiredKeys = entries.filter(([, field]) => field._zod.optin !== 'optional').map(([key]) => key);
      return fc.record(Object.fromEntries(entries.map(([key, field]) => [key, of(field)])), { requiredKeys });
    }
    case 'string':
      return strings(schema, ids);
    case 'number':
      return numbers(schema);
    case 'boolean':
      return fc.boolean();
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries));
    case 'literal':
      return fc.constantFrom(...def.values);
    case 'nullable':
      return fc.oneof(
        { weight: 1, arbitrary: fc.constant(null) },
        { weight: 3, arbitrary: of(def.innerType) },
      );
    case 'optional':
    case 'default':
    case 'prefault':
    case 'nonoptional':
    case 'readonly':
    case 'catch':
      return of(def.innerType);
    case 'array': {
      const { minimum: minLength = 0, maximum = 4 } = limitsOf(schema);
      return fc.array(of(def.element), { minLength, maxLength: Math.min(maximum, minLength + 4) });
    }
    case 'tuple':
      return fc.tuple(...def.items.map(of));
    case 'union':
      return fc.oneof(...def.options.map(of));
    case 'record':
      return fc.dictionary(fc.oneof(of(def.keyType) as fc.Arbitrary<string>, text), of(def.valueType), {
        maxKeys: 4,
      });
    case 'pipe':
      return of((def.in as z.core.$ZodTypes)._zod.def.type === 'transform' ? def.out : def.in);
    case 'null':
      return fc.constant(null);
    case 'any':
    case 'unknown':
      return fc.jsonValue({ maxDepth: 2 });
    default:
      throw new Error(
        `Requests can't be made up from a schema of type ${def.type} yet: teach from-schema.ts.`,
      );
  }
}

const isNever = (schema: z.core.$ZodType): boolean => {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'never') return true;
  return (def.type === 'optional' || def.type === 'nullable') && isNever(def.innerType);
};
