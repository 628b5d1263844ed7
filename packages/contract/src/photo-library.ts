import { purposes, systems } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, pageQuery } from './common.ts';
import { photo } from './photos.ts';

export const photoLibraryQuery = pageQuery.extend({
  q: z.string().max(200).optional().meta({
    description: 'Words; each must occur in the caption, a finding’s title or system, or the boat’s name',
  }),
  system: z.enum(systems).optional().meta({ description: 'Shown by a finding of this system' }),
  hullMaterial: z
    .string()
    .trim()
    .max(80)
    .optional()
    .meta({ description: 'A usual key such as grp or steel, or in words' }),
  from: day.optional().meta({ description: 'Taken on this day or later' }),
  to: day.optional().meta({ description: 'Taken on this day or earlier' }),
});

/** A photo of the firm’s, with the boat, the survey and the findings it belongs to. */
export const libraryPhoto = z
  .object({
    ...photo.pick({
      id: true,
      surveyId: true,
      caption: true,
      takenAt: true,
      width: true,
      height: true,
      thumbWidth: true,
      thumbHeight: true,
      state: true,
      images: true,
    }).shape,
    vessel: z.object({ id, name: z.string(), hullMaterial: z.string().nullable() }),
    survey: z.object({ id, number: z.string(), purpose: z.enum(purposes) }),
    findings: z.array(z.object({ id, number: z.int(), title: z.string(), system: z.enum(systems) })),
  })
  .meta({ id: 'LibraryPhoto' });
export type LibraryPhoto = z.infer<typeof libraryPhoto>;
