import {
  attendanceConditions,
  partyRoles,
  purposes,
  surveyStates,
  urgencies,
} from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, email, id, instant, line, name, pageQuery, text, timeZone, versioned } from './common.ts';

export const attendance = z
  .strictObject({ date: day, place: line(160), condition: z.enum(attendanceConditions) })
  .meta({ id: 'Attendance' });

const fields = {
  vesselId: id,
  purpose: z.enum(purposes),
  requestedBy: text(200).meta({ description: 'Who asked for the survey' }),
  scope: text(20_000),
  limitations: text(20_000),
  timeZone,
  attendances: z.array(attendance).max(50),
  present: z.array(line(160)).max(30).meta({ description: 'Who else was there, each with what they are' }),
  clearanceDecidedBy: z.enum(['insurer', 'surveyor']).meta({ description: 'Who decides on evidence' }),
  surveyorId: id.nullable().meta({ description: 'The person who signs; the creator when it is a surveyor' }),
  leadPhotoId: id.nullable().meta({ description: 'The photo on the cover' }),
  printCosts: z.boolean().meta({
    description: 'Whether reports print what putting findings right may cost, and parties see it',
  }),
};

/** What the findings of one urgency may cost together, in one currency. */
export const surveyCost = z
  .object({
    urgency: z.enum(urgencies),
    currency: z.string(),
    low: z.int().meta({ description: 'In minor units of the currency' }),
    high: z.int(),
    findings: z.int().meta({ description: 'How many findings are in it' }),
    opinions: z.int().meta({ description: 'How many of them rest on the surveyor’s opinion' }),
  })
  .meta({ id: 'SurveyCost' });

export const surveyCreate = z.strictObject({
  vesselId: fields.vesselId,
  purpose: fields.purpose,
  requestedBy: fields.requestedBy.default(''),
  scope: fields.scope.default(''),
  limitations: fields.limitations.default(''),
  timeZone: fields.timeZone.default('UTC'),
  attendances: fields.attendances.default([]),
  present: fields.present.default([]),
  clearanceDecidedBy: fields.clearanceDecidedBy.default('insurer'),
  surveyorId: fields.surveyorId.optional(),
  printCosts: fields.printCosts.default(false),
});
export const surveyPatch = z.strictObject({ ...fields, state: z.enum(surveyStates) }).partial();

export const survey = z
  .object({
    id,
    firmId: id,
    firmName: z.string(),
    number: z.string().meta({ example: '2026-0042' }),
    state: z.enum(surveyStates),
    vesselId: id,
    vesselName: z.string(),
    purpose: z.enum(purposes),
    requestedBy: z.string(),
    scope: z.string(),
    limitations: z.string(),
    timeZone: z.string(),
    attendances: z.array(attendance),
    present: z.array(z.string()),
    clearanceDecidedBy: z.enum(['insurer', 'surveyor']),
    surveyorId: id.nullable(),
    surveyorName: z.string().nullable(),
    leadPhotoId: id.nullable(),
    findingCount: z.int().meta({ description: 'Findings the caller may see' }),
    photoCount: z.int().nullable().meta({ description: 'Photos on file; null for parties' }),
    openCount: z.int().meta({ description: 'Issued findings that require clearing and are not yet decided' }),
    nextDueOn: day.nullable(),
    printCosts: z.boolean(),
    costs: z
      .array(surveyCost)
      .meta({ description: 'Totals by urgency, most urgent first; for parties only when they are printed' }),
    issuedAt: instant.nullable(),
    myRoles: z.array(z.string()).meta({ description: 'What the caller is to this survey' }),
    client: z
      .boolean()
      .meta({ description: 'Whether the caller pays for it and says to whom it is released' }),
    released: z.boolean().meta({ description: 'Whether what was issued is shown to the caller' }),
    held: z.boolean().meta({
      description:
        'Whether what was issued is withheld from every party until paid for or the firm gives the word',
    }),
    createdAt: instant,
    updatedAt: instant,
    ...versioned,
  })
  .meta({ id: 'Survey' });
export type Survey = z.infer<typeof survey>;

export const surveyQuery = pageQuery.extend({
  state: z.enum(surveyStates).optional(),
  vesselId: id.optional(),
  q: z.string().max(100).optional().meta({ description: 'Part of the number or the vessel name' }),
});

export const partyCreate = z.strictObject({
  role: z.enum(partyRoles),
  name,
  email,
  released: z.boolean().optional().meta({
    description: 'Whether what was issued is released to them; by default to owner, buyer and yard',
  }),
  client: z.boolean().optional().meta({
    description:
      'Whether they pay for the survey and so say to whom it is released; for the firm to set, never a yard',
  }),
  findingIds: z.array(id).max(500).optional().meta({
    description: 'Of a yard: the findings it is asked to put right; it sees these and no others',
  }),
});
export const party = z
  .object({
    id,
    role: z.enum(partyRoles),
    name: z.string(),
    email: z.string(),
    released: z.boolean(),
    client: z.boolean().meta({ description: 'Whether they pay for the survey and so own the report' }),
    findingIds: z.array(id).meta({ description: 'Of a yard: the findings it is asked to put right' }),
    viewedAt: instant.nullable().meta({ description: 'When they last opened an issued document here' }),
    joined: z.boolean().meta({ description: 'Whether they have chosen a password' }),
    mailRefused: z.boolean().meta({ description: 'Whether mail servers refuse their address' }),
    createdAt: instant,
  })
  .meta({ id: 'Party' });
export const partyPatch = z
  .strictObject({
    released: z.boolean().meta({ description: 'Whether what was issued is released to them' }),
    client: z.boolean().meta({ description: 'Whether they pay for the survey; for the firm to set' }),
  })
  .partial()
  .refine((patch) => Object.keys(patch).length > 0, 'Say what to change: released or client.');
/** The findings that a yard is asked to put right. */
export const yardFindings = z.strictObject({ findingIds: z.array(id).max(500) }).meta({ id: 'YardFindings' });
/** Which yards are asked to put a finding right. */
export const findingYards = z.strictObject({ partyIds: z.array(id).max(20) }).meta({ id: 'FindingYards' });
export const partyParams = z.object({ id, partyId: id });

export const surveyEvent = z
  .object({
    id,
    at: instant,
    kind: z.string().meta({ example: 'finding.cleared' }),
    summary: z.string().meta({ description: 'The event in a sentence' }),
    actor: z.object({ name: z.string(), role: z.string() }),
    findingId: id.nullable(),
    reportId: id.nullable(),
  })
  .meta({ id: 'SurveyEvent' });
