import { reaches, reachNeedsReason, reasonMissing } from '@garboard/trade/coverage';
import { systems } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, text } from './common.ts';

const system = z.enum(systems);
const answer = {
  reached: z
    .enum(reaches)
    .nullable()
    .meta({ description: 'How far the system was reached; null takes an answer back' }),
  reason: text(2000)
    .default('')
    .meta({ description: 'Why it was not reached, or not wholly; required with `partly` and `not-reached`' }),
  lookedFrom: text(300).default('').meta({
    description: 'The place from which it was looked at, such as “from deck level with binoculars”',
  }),
};

const reasonGiven = (a: { reached: z.output<typeof answer.reached>; reason: string }) =>
  !reachNeedsReason(a.reached) || a.reason !== '';
const reasonRule = { path: ['reason'], message: reasonMissing };

export const coverageAnswer = z.strictObject(answer).refine(reasonGiven, reasonRule);
export type CoverageAnswer = z.output<typeof coverageAnswer>;

export const coverageReplace = z.strictObject({
  items: z
    .array(z.strictObject({ system, ...answer }).refine(reasonGiven, reasonRule))
    .max(systems.length)
    .refine((items) => new Set(items.map((i) => i.system)).size === items.length, 'Name each system once.')
    .meta({ description: 'Systems left out become unanswered' }),
});

export const coverageItem = z
  .object({
    system,
    asked: z.boolean().meta({
      description: 'Whether the report can’t be issued without an answer: the purpose or a finding asks',
    }),
    reached: z.enum(reaches).nullable(),
    reason: z.string(),
    lookedFrom: z.string(),
    updatedAt: instant.nullable(),
    version: z.int().meta({ description: 'Rises with each answer, 0 before the first; also the ETag' }),
  })
  .meta({ id: 'CoverageItem' });
export type CoverageItem = z.infer<typeof coverageItem>;

export const coverage = z
  .object({
    items: z.array(coverageItem).meta({ description: 'Every system, in the usual order' }),
    unanswered: z.array(system).meta({ description: 'Those that stop the report' }),
    may: z.object({ edit: z.boolean() }).meta({ description: 'What the caller may do now' }),
  })
  .meta({ id: 'Coverage' });
export type Coverage = z.infer<typeof coverage>;

export const coverageParams = z.object({ id, system });
