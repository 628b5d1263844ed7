import { decisions, findingStates, systems, urgencies } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, instant, pageQuery, text, totalAsked, wantsTotal } from './common.ts';

/** Who has to do the next thing about a recommendation. */
export const clearers = ['owner', 'insurer', 'surveyor'] as const;
export type Clearer = (typeof clearers)[number];

export const dueChoices = ['overdue', 'this-week', 'later', 'none'] as const;
export const recommendationSorts = ['due', 'vessel', 'urgency', 'sent'] as const;

/** A yes or no in an address. */
const flag = z.enum(['yes', 'no']);

/** What of the recommendations is asked for; everything is optional and everything given must hold. */
const filters = {
  state: z.enum(findingStates).exclude(['draft']).optional(),
  decided: flag.optional().meta({ description: 'Whether nothing more is asked of the owner' }),
  due: z.enum(dueChoices).optional().meta({
    description:
      'overdue; this-week: today or within the next 7 days; later; none: without a day. Of what is undecided',
  }),
  dueFrom: day.optional(),
  dueBefore: day.optional(),
  urgency: z.enum(urgencies).optional(),
  system: z.enum(systems).optional(),
  firmId: id.optional(),
  vesselId: id.optional(),
  surveyId: id.optional(),
  waitingFor: z
    .enum([...clearers, 'me'])
    .optional()
    .meta({ description: 'Who has to do the next thing; me: what the caller may decide now' }),
  q: z.string().max(100).optional().meta({ description: 'Part of the title, vessel name or survey number' }),
};

export const recommendationFilter = z.object(filters);
export type RecommendationFilter = z.output<typeof recommendationFilter>;

export const recommendationQuery = pageQuery.extend({
  ...filters,
  total: wantsTotal,
  sort: z.enum(recommendationSorts).default('due').meta({
    description: 'due: soonest first; sent: evidence that has waited longest first; vessel; urgency',
  }),
});

export const recommendation = z
  .object({
    id,
    number: z.int(),
    title: z.string(),
    system: z.enum(systems),
    urgency: z.enum(urgencies),
    state: z.enum(findingStates),
    dueOn: day.nullable(),
    overdue: z.boolean(),
    waitingFor: z.enum(clearers).nullable(),
    evidence: z
      .object({ clearanceId: id, sentAt: instant, sentBy: z.string() })
      .nullable()
      .meta({ description: 'The evidence that waits for a decision' }),
    mayDecide: z.boolean().meta({ description: 'Whether the caller may decide on that evidence' }),
    surveyId: id,
    surveyNumber: z.string(),
    vesselId: id,
    vesselName: z.string(),
    firmId: id,
    firmName: z.string(),
  })
  .meta({ id: 'Recommendation' });
export type Recommendation = z.output<typeof recommendation>;

export const recommendationPage = z.object({
  items: z.array(recommendation),
  next: z.string().nullable(),
  total: totalAsked,
});

export const recommendationCounts = z
  .object({
    undecided: z.int(),
    overdue: z.int(),
    dueThisWeek: z.int().meta({ description: 'Today or within the next 7 days' }),
    waitingForMe: z.int().meta({ description: 'Evidence on which the caller may decide now' }),
    waitingFor: z.object({ owner: z.int(), insurer: z.int(), surveyor: z.int() }),
    decided: z.int(),
    vessels: z.int().meta({ description: 'Vessels of the surveys that the caller may see' }),
    unreleased: z.int().meta({ description: 'Surveys of which nothing has been released to the caller' }),
    firms: z.array(z.object({ id, name: z.string() })).meta({ description: 'The firms of those surveys' }),
  })
  .meta({ id: 'RecommendationCounts' });

/** A vessel with what is to be done about it, over all its surveys that the caller may see. */
export const coveredVessel = z
  .object({
    id,
    name: z.string(),
    firmId: id,
    firmName: z.string(),
    latestSurveyId: id,
    latestSurveyNumber: z.string(),
    released: z.boolean().meta({ description: 'Whether anything issued may be seen by the caller' }),
    issued: z.boolean().meta({ description: 'Whether a report has been issued' }),
    undecided: z.int(),
    overdue: z.int(),
    dueThisWeek: z.int(),
    waitingForMe: z.int(),
    decided: z.int(),
    nextDueOn: day.nullable(),
  })
  .meta({ id: 'CoveredVessel' });
export type CoveredVessel = z.output<typeof coveredVessel>;

export const coveredVesselQuery = pageQuery.extend({
  firmId: id.optional(),
  only: z
    .enum(['undecided', 'overdue', 'this-week', 'waiting-for-me', 'unreleased'])
    .optional()
    .meta({ description: 'Only vessels that have such a recommendation' }),
  q: z.string().max(100).optional().meta({ description: 'Part of the vessel’s name' }),
  sort: z
    .enum(['due', 'vessel'])
    .default('due')
    .meta({ description: 'due: the vessel whose next day comes soonest first' }),
});

/** One decision for many pieces of evidence. */
export const decisionsBody = z
  .strictObject({
    clearanceIds: z
      .array(id)
      .min(1, 'Choose at least one.')
      .max(100, 'At most 100 at a time.')
      .meta({ description: 'The evidence as it was listed; newer evidence is not touched' }),
    decision: z.enum(decisions).extract(['accept', 'return']),
    reason: text(4_000).min(1, 'Give the reason; it stands in the record of each of them.'),
  })
  .meta({ id: 'Decisions' });

export const decisionsAnswer = z
  .object({
    done: z.array(z.object({ clearanceId: id, findingId: id })),
    refused: z
      .array(
        z.object({
          clearanceId: id,
          type: z.string().meta({ description: 'The type of problem', example: 'already-decided' }),
          detail: z.string().meta({ description: 'What happened and what to do' }),
        }),
      )
      .meta({ description: 'Those that were not decided, each with why; the others are' }),
  })
  .meta({ id: 'DecisionsAnswer' });
