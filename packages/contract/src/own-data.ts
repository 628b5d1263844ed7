import { z } from 'zod';
import { email, instant } from './common.ts';

const row = z.record(z.string(), z.unknown());

/** Everything that is kept of a person. */
export const personExport = z
  .object({
    exportedAt: instant,
    person: row.meta({ description: 'The account' }),
    sections: z.array(
      z.object({
        table: z.string(),
        column: z.string().meta({ description: 'The column that holds the person’s id' }),
        title: z.string(),
        rows: z.array(row).meta({ description: 'Columns as they are kept, without secrets' }),
      }),
    ),
  })
  .meta({ id: 'PersonExport' });

export const erasure = z.strictObject({
  email: email.meta({ description: 'Your own address, to confirm it' }),
  currentPassword: z.string().min(1).max(200).optional(),
});
