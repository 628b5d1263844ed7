import { z } from 'zod';

/** A list of rows, each with the same fields; shown as a table to be filled in. */
export function rows<Columns extends Record<string, z.ZodType>>(spec: {
  label: string;
  help?: string;
  /** What one row is called: `reading`, `plate`. */
  each: string;
  columns: Columns;
  min?: number;
  max: number;
}) {
  const min = spec.min ?? 1;
  return z
    .array(z.strictObject(spec.columns), { error: `${spec.label}: give a list of ${spec.each} rows.` })
    .min(min, `${spec.label}: at least ${min} ${min === 1 ? spec.each : `${spec.each} rows`} must be given.`)
    .max(spec.max, `${spec.label}: at most ${spec.max} ${spec.each} rows can be given.`)
    .meta({
      title: spec.label,
      ...(spec.help ? { description: spec.help } : {}),
      'x-field': 'rows',
      'x-each': spec.each,
    });
}

/** A rectangular grid of readings, row by row; `null` where none was taken. Give `[row][column]`. */
export function grid(spec: { label: string; help?: string; min?: number; max?: number; largest: number }) {
  const cell = z.number({
    error: 'each reading must be a number, or null where none was taken.',
  });
  return z
    .array(z.array(cell.nullable(), { error: 'give a list of readings.' }).min(1, 'it has no readings.'), {
      error: `${spec.label}: give a list of rows, each a list of readings.`,
    })
    .min(1, `${spec.label}: give at least one row of readings.`)
    .superRefine((given, context) => {
      const message = gridProblem(given, spec);
      if (message) context.addIssue({ code: 'custom', message, input: given });
    })
    .meta({
      title: spec.label,
      ...(spec.help ? { description: spec.help } : {}),
      'x-field': 'grid',
      ...(spec.min === undefined ? {} : { 'x-min': spec.min }),
      ...(spec.max === undefined ? {} : { 'x-max': spec.max }),
    });
}

function gridProblem(
  given: ReadonlyArray<ReadonlyArray<number | null>>,
  spec: { label: string; min?: number; max?: number; largest: number },
): string | undefined {
  const width = given[0]?.length ?? 0;
  const uneven = given.findIndex((row) => row.length !== width);
  if (uneven > 0) {
    return `${spec.label}: row ${uneven + 1} has ${given[uneven]?.length} readings and the first ${width}; fill gaps with null.`;
  }
  if (width * given.length > spec.largest) {
    return `${spec.label}: ${width * given.length} readings are more than the ${spec.largest} one map can hold.`;
  }
  for (const [y, row] of given.entries()) {
    for (const [x, value] of row.entries()) {
      if (value === null) continue;
      if (spec.min !== undefined && value < spec.min)
        return `${spec.label}: row ${y + 1}, reading ${x + 1} is ${value}, less than ${spec.min}.`;
      if (spec.max !== undefined && value > spec.max)
        return `${spec.label}: row ${y + 1}, reading ${x + 1} is ${value}, more than ${spec.max}.`;
    }
  }
  return undefined;
}
