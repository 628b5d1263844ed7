import { harms, systems, urgencies } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, line, optionalLine, pageQuery, text, versioned } from './common.ts';
import { daysFit, daysMessage } from './findings.ts';

/** Whose words an entry is read in: ours, the firm's own defect, or the firm's words over ours. */
export const catalogueOrigins = ['garboard', 'firm', 'firm-wording'] as const;
export type CatalogueOrigin = (typeof catalogueOrigins)[number];

const key = z.string().meta({
  description: 'Stable; lower-case words joined by hyphens',
  example: 'gas-locker-drain-shared',
});
// Longer or odd keys name nothing: 404, like any other unknown one.
export const catalogueParams = z.object({ key: z.string().max(100) });

const firmId = id.optional().meta({ description: 'Needed by those who work for several firms' });
export const catalogueFirmQuery = z.object({ firmId });
export const catalogueQuery = pageQuery.extend({
  q: z.string().max(200).optional().meta({
    description: 'Words in any order; the last may be unfinished, and slips of spelling are forgiven',
  }),
  system: z.enum(systems).optional(),
  standard: z.string().max(120).optional().meta({
    description: 'A standard or regulation by its designation or the beginning of it',
    example: 'ISO 10239',
  }),
  firmId,
});

const paragraphs = text(40_000);
const fields = {
  system: z.enum(systems),
  title: line(200).meta({ description: 'As it would be said on the telephone' }),
  lookFor: paragraphs.default('').meta({ description: 'Where to look and how to test' }),
  observed: paragraphs.default('').meta({ description: 'What was seen, with slots such as {location}' }),
  consequence: paragraphs.default('').meta({ description: 'Why it matters' }),
  recommendation: paragraphs.default('').meta({ description: 'How to put it right' }),
  urgency: z.enum(urgencies),
  withinDays: z.int().min(1).max(3650).nullable().default(null),
  raise: optionalLine(1000).default(null).meta({ description: 'When it is more urgent than that' }),
  lower: optionalLine(1000).default(null).meta({ description: 'When it is less urgent than that' }),
  harms: z.array(z.enum(harms)).min(1, 'Name at least one kind of harm.').max(11),
  references: z.array(line(200)).max(30).default([]),
  worksheets: z.array(z.string().max(80)).max(20).default([]).meta({ description: 'By kind' }),
  cautions: z.array(line(1000)).max(20).default([]),
  related: z.array(z.string().max(80)).max(20).default([]).meta({ description: 'By key' }),
  alsoCalled: z.array(line(120)).max(30).default([]).meta({ description: 'Other words, for the search' }),
};

/** A firm's entry, whole: every save is a new version. */
export const catalogueWording = z.strictObject(fields).refine(daysFit, daysMessage);
export type CatalogueWording = z.output<typeof catalogueWording>;

const read = {
  key,
  system: z.enum(systems),
  title: z.string(),
  lookFor: z.string(),
  observed: z.string(),
  consequence: z.string(),
  recommendation: z.string(),
  urgency: z.enum(urgencies),
  withinDays: z.int().nullable(),
  raise: z.string().nullable(),
  lower: z.string().nullable(),
  harms: z.array(z.enum(harms)),
  references: z.array(z.string()),
  worksheets: z.array(z.object({ kind: z.string(), title: z.string() })),
  cautions: z.array(z.string()),
  related: z.array(z.object({ key, title: z.string() })),
  alsoCalled: z.array(z.string()),
  origin: z.enum(catalogueOrigins),
  ...versioned,
};

export const catalogueEntry = z
  .object({
    ...read,
    diagram: z
      .object({
        title: z.string(),
        description: z.string(),
        svg: z.string(),
        width: z.number(),
        height: z.number(),
      })
      .nullable(),
    slots: z
      .array(z.object({ key: z.string(), label: z.string(), example: z.string() }))
      .meta({ description: 'The gaps in its texts, in their order' }),
    may: z.object({ edit: z.boolean() }).meta({ description: 'What the caller may do now' }),
  })
  .meta({ id: 'CatalogueEntry' });
export type CatalogueEntry = z.infer<typeof catalogueEntry>;

export const catalogueListed = z
  .object({
    key,
    system: z.enum(systems),
    title: z.string(),
    urgency: z.enum(urgencies),
    harms: z.array(z.enum(harms)),
    origin: z.enum(catalogueOrigins),
    hasDiagram: z.boolean(),
  })
  .meta({ id: 'CatalogueListed' });
export type CatalogueListed = z.infer<typeof catalogueListed>;

export const cataloguePage = z.object({
  items: z.array(catalogueListed),
  next: z.string().nullable(),
  readAs: z.string().nullable().meta({
    description: 'The words it was read as, when none of the entries has those that were written',
  }),
});

export const catalogueVersion = z
  .object({
    ...read,
    savedAt: instant,
    savedBy: z.string(),
    current: z.boolean().meta({ description: 'Whether entries are read in these words now' }),
    retiredAt: instant.nullable().meta({ description: 'When the firm took its words back' }),
    retiredBy: z.string().nullable(),
  })
  .meta({ id: 'CatalogueVersion' });
export type CatalogueVersion = z.infer<typeof catalogueVersion>;

export const catalogueVersionQuery = pageQuery.extend({
  limit: z.coerce.number().int().min(1).max(20).default(10),
  firmId,
});
