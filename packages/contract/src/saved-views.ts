import { z } from 'zod';
import { id, instant, line } from './common.ts';

export const viewPages = ['recommendations', 'vessels', 'jobs'] as const;

/** The filters of a list as they stand in its address. */
const query = z
  .record(z.string().regex(/^[a-zA-Z]{1,30}$/), z.string().max(200))
  .refine((q) => Object.keys(q).length <= 20, 'At most 20 filters.')
  .meta({ description: 'Filters and order as in the address of the list', example: { due: 'overdue' } });

const fields = {
  page: z.enum(viewPages).meta({ description: 'The list it belongs to' }),
  name: line(60),
  query,
};
export const savedViewCreate = z.strictObject(fields);
export const savedViewPatch = z.strictObject({ name: fields.name, query: fields.query }).partial();
export const savedView = z
  .object({ id, ...fields, name: z.string(), createdAt: instant })
  .meta({ id: 'SavedView' });
export type SavedView = z.output<typeof savedView>;
export const savedViewQuery = z.object({ page: fields.page.optional() });
