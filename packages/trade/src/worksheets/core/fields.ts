import { z } from 'zod';
import { Quantity, withUnit } from './quantity.ts';
import { symbolOf, type Unit } from './units.ts';
import { formatNumber } from './working.ts';

/**
 * The fields a worksheet's inputs are made of. Each is a zod schema whose JSON Schema says, in `x-` keywords, what a
 * form needs to ask for it: the kind of field, its unit and the units it may be given in, the words of its choices.
 */

interface Asked {
  /** What is asked, in sentence case: `Bore of the drain`. */
  label: string;
  /** How or where to measure it, in a sentence. */
  help?: string;
}

interface Limits {
  /** Least and greatest, both allowed, in the default unit. */
  min?: number;
  max?: number;
  /** Must be greater than this, in the default unit. */
  above?: number;
}

const described = ({ label, help }: Asked) => ({ title: label, ...(help ? { description: help } : {}) });

function outside(value: number, limits: Limits): 'more' | 'less' | 'above' | undefined {
  if (limits.above !== undefined && value <= limits.above) return 'above';
  if (limits.min !== undefined && value < limits.min) return 'less';
  if (limits.max !== undefined && value > limits.max) return 'more';
  return undefined;
}

/** What is wrong with a value by its limits, in a sentence. Long lists pass here: words are made only when needed. */
function rangeProblem(label: string, given: Quantity, limits: Limits, unit: Unit): string | undefined {
  const beyond = outside(given.in(unit), limits);
  return beyond && rangeWords[beyond](label, limits, unit, given.text(6));
}

const limitText = (limit: number | undefined, unit: Unit) => withUnit(formatNumber(limit ?? 0, 6), unit);

const rangeWords = {
  above: (label: string, { above }: Limits, unit: Unit, given: string) =>
    `${label} must be more than ${limitText(above, unit)}; ${given} was given.`,
  less: (label: string, { min }: Limits, unit: Unit, given: string) =>
    `${label} must be at least ${limitText(min, unit)}; ${given} was given.`,
  more: (label: string, { max }: Limits, unit: Unit, given: string) =>
    `${label} can’t be more than ${limitText(max, unit)}; ${given} was given.`,
};

const limitKeywords = ({ min, max, above }: Limits) => ({
  ...(min === undefined ? {} : { 'x-min': min }),
  ...(max === undefined ? {} : { 'x-max': max }),
  ...(above === undefined ? {} : { 'x-above': above }),
});

/**
 * A measured value: a bare number in `unit`, or `{value, unit}` in any of `units` (which include the default).
 * Gives a {@link Quantity}. Limits are in the default unit.
 */
export function measure(spec: Asked & Limits & { unit: Unit; units?: readonly Unit[] }) {
  const units = [...new Set([spec.unit, ...(spec.units ?? [])])];
  const how = `${spec.label}: give a number${symbolOf(spec.unit) ? ` in ${symbolOf(spec.unit)}` : ''}${
    units.length > 1 ? `, or {"value": number, "unit": one of ${units.join(', ')}}` : ''
  }.`;
  return z
    .union([z.number(), z.strictObject({ value: z.number(), unit: z.enum(units) })], { error: how })
    .transform((given, context) => {
      const quantity =
        typeof given === 'number' ? new Quantity(given, spec.unit) : new Quantity(given.value, given.unit);
      const message = rangeProblem(spec.label, quantity, spec, spec.unit);
      if (message) {
        context.addIssue({ code: 'custom', message, input: given });
        return z.NEVER;
      }
      return quantity;
    })
    .meta({
      ...described(spec),
      'x-field': 'measure',
      'x-unit': spec.unit,
      'x-units': units.map((key) => ({ key, symbol: symbolOf(key) })),
      ...limitKeywords(spec),
    });
}

/** A plain number without a unit: a factor, a meter's relative reading. */
export function plainNumber(spec: Asked & Limits) {
  return z
    .number({ error: `${spec.label}: give a number.` })
    .superRefine((value, context) => {
      const message = rangeProblem(spec.label, new Quantity(value, 'one'), spec, 'one');
      if (message) context.addIssue({ code: 'custom', message, input: value });
    })
    .meta({ ...described(spec), 'x-field': 'number', ...limitKeywords(spec) });
}

/** A whole number of things. */
export function count(spec: Asked & Limits) {
  return z
    .number({ error: `${spec.label}: give a whole number.` })
    .superRefine((value, context) => {
      const message = Number.isInteger(value)
        ? rangeProblem(spec.label, new Quantity(value, 'one'), spec, 'one')
        : `${spec.label} must be a whole number; ${formatNumber(value, 6)} was given.`;
      if (message) context.addIssue({ code: 'custom', message, input: value });
    })
    .meta({ ...described(spec), 'x-field': 'count', ...limitKeywords(spec) });
}

/** One of a few: keys travel, labels are read. */
export function choice<const Choices extends Record<string, string>>(spec: Asked & { choices: Choices }) {
  const keys = Object.keys(spec.choices) as Array<keyof Choices & string>;
  return z
    .enum(keys as [keyof Choices & string, ...Array<keyof Choices & string>], {
      error: `${spec.label}: choose one of ${keys.join(', ')}.`,
    })
    .meta({
      ...described(spec),
      'x-field': 'choice',
      'x-choices': keys.map((key) => ({ key, label: spec.choices[key] })),
    });
}

/** Yes or no. */
export function yesNo(spec: Asked) {
  return z
    .boolean({ error: `${spec.label}: answer true or false.` })
    .meta({ ...described(spec), 'x-field': 'yesNo' });
}

/** A checklist answer: seen to be so, seen not to be so, or not examined. */
export function checked(spec: Asked) {
  return choice({ ...spec, choices: { yes: 'Yes', no: 'No', 'not-examined': 'Not examined' } });
}

/** One line of plain text. */
export function words(spec: Asked & { max?: number }) {
  const max = spec.max ?? 200;
  return z
    .string({ error: `${spec.label}: write plain text.` })
    .normalize()
    .trim()
    .min(1, `${spec.label} must not be empty.`)
    .max(max, `${spec.label}: at most ${max} characters.`)
    .refine((given) => !/\p{Cc}/u.test(given), `${spec.label}: write one line, without control characters.`)
    .meta({ ...described(spec), 'x-field': 'words' });
}

/** A calendar day, `YYYY-MM-DD`. */
export function day(spec: Asked) {
  return z.iso
    .date({ error: `${spec.label}: give a day as YYYY-MM-DD.` })
    .meta({ ...described(spec), 'x-field': 'day' });
}

/** May be left out. */
export const optional = <T extends z.ZodType>(field: T) => field.optional();

/** What is taken when nothing is given, in the form it would be given in: a firm's own choice, by name. */
export const fallback = <T extends z.ZodType>(field: T, value: z.input<T>) =>
  field.prefault(value as Parameters<typeof field.prefault>[0]);
