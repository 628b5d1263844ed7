import { z } from 'zod';
import { inputSchema } from './evaluate.ts';
import type { AnyWorksheet } from './worksheet.ts';

/**
 * A worksheet's inputs as JSON Schema (2020-12). Each field has `title`, `description` and `x-field`, measures also
 * `x-unit` (of a bare number), `x-units` and `x-min`, `x-max`, `x-above` in that unit.
 */
export function inputJsonSchema(worksheet: AnyWorksheet): Record<string, unknown> {
  const { $schema: _, ...schema } = z.toJSONSchema(inputSchema(worksheet), {
    io: 'input',
    unrepresentable: 'throw',
  });
  return schema;
}
