import { costBases } from '@garboard/trade/costs';
import {
  decisions,
  findingStates,
  firmRoles,
  harms,
  partyRoles,
  systems,
  urgencies,
  verdicts,
} from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { coveredItem } from './clearances.ts';
import { day, id, instant } from './common.ts';
import { findingItem } from './finding-items.ts';
import { position } from './findings.ts';

/** A photo as it is printed: its size in pixels is that of the upright picture, quarter turns applied. */
export const snapshotPhoto = z.object({
  id,
  caption: z.string(),
  width: z.int().positive(),
  height: z.int().positive(),
  takenAt: instant.nullable(),
});

/** More time that was given. */
const snapshotExtension = z.object({
  from: day.nullable(),
  dueOn: day,
  reason: z.string(),
  byName: z.string(),
  byRole: z.enum([...partyRoles, ...firmRoles]),
  at: instant,
});

/** Evidence sent for a finding, and the decision on it when there is one. */
export const snapshotClearance = z
  .object({
    statement: z.string(),
    workDoneBy: z.string().nullable(),
    workDoneOn: day.nullable(),
    decision: z.enum(decisions).nullable(),
    decidedByName: z.string().nullable(),
    decidedByRole: z.enum([...partyRoles, ...firmRoles]).nullable(),
    decidedAt: instant.nullable(),
    reason: z.string().nullable(),
    // What was sent and frozen before these were kept has none.
    limit: z.string().nullable().default(null),
    limitUntil: day.nullable().default(null),
    items: z.array(coveredItem).default([]),
    sentByName: z.string().nullable().default(null),
    sentByRole: z
      .enum([...partyRoles, ...firmRoles])
      .nullable()
      .default(null),
    sentAt: instant.nullable().default(null),
    photos: z.int().default(0),
    documents: z.array(z.string()).default([]),
    worksheet: z
      .object({ title: z.string(), verdict: z.enum(verdicts) })
      .nullable()
      .default(null),
  })
  .refine((c) => c.decision === null || (c.decidedByName !== null && c.decidedAt !== null), {
    path: ['decision'],
    message: 'A decision needs the name of who decided and the time.',
  });

/** What putting it right may cost, in minor units of the currency. */
const snapshotCost = z.object({
  low: z.int(),
  high: z.int(),
  currency: z.string(),
  basis: z.enum(costBases),
  note: z.string(),
});

export const snapshotFinding = z.object({
  id,
  number: z.int().positive(),
  system: z.enum(systems),
  title: z.string(),
  observed: z.string(),
  consequence: z.string(),
  recommendation: z.string(),
  urgency: z.enum(urgencies),
  withinDays: z.int().positive().nullable(),
  dueOn: day.nullable(),
  harms: z.array(z.enum(harms)),
  references: z.array(z.string()),
  photos: z.array(snapshotPhoto),
  state: z.enum(findingStates),
  clearance: snapshotClearance.nullable(),
  // Only when the firm chose to print costs; snapshots frozen before there were any have none.
  cost: snapshotCost.nullable().default(null),
  // The known defect it began from, a key of `catalogue`, and where on board it is.
  catalogueKey: z.string().nullable().default(null),
  position: position.nullable().default(null),
  // Things to be put right one by one, as they stand; findings of before have none.
  items: z.array(findingItem).default([]),
  // The last day as the surveyor set it by hand.
  dueOnSet: day.nullable().default(null),
  // Whether `before-use` has a last day besides: set by hand, by the firm's days or by more time given.
  dueStated: z.boolean().default(false),
  // Within what it was accepted as it is, more time that was given, and everything that was sent, oldest first.
  limit: z.object({ text: z.string(), until: day.nullable() }).nullable().default(null),
  extensions: z.array(snapshotExtension).default([]),
  withdrawal: z.object({ reason: z.string(), by: z.string(), at: instant }).nullable().default(null),
  evidence: z.array(snapshotClearance).default([]),
});
