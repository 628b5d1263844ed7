import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { password, secondFactorCode } from './account.ts';
import { email, id, instant, line, name, text } from './common.ts';

export const person = z.object({ id, name: z.string(), email: z.string() }).meta({ id: 'Person' });

export const signIn = z.strictObject({
  email,
  password: z.string().min(1).max(200),
  code: secondFactorCode.optional().meta({ description: 'For people with a second factor' }),
});

export const sessionCreated = z
  .object({ token: z.string(), expiresAt: instant, person })
  .meta({ id: 'SessionCreated' });

export const me = z
  .object({
    person,
    firmRoles: z.array(z.object({ firm: z.object({ id, name: z.string() }), role: z.enum(firmRoles) })),
    parties: z.array(
      z.object({
        surveyId: id,
        surveyNumber: z.string(),
        vesselName: z.string(),
        firmId: id,
        firmName: z.string(),
        role: z.enum(partyRoles),
        released: z.boolean(),
      }),
    ),
  })
  .meta({ id: 'Me' });

/** Asks what a one-time link is for, before it is used. */
export const welcomeLookup = z.strictObject({ token: z.string().min(20).max(200) });
export const welcomeInfo = z
  .object({
    kind: z.enum(['first-account', 'invitation', 'sign-in']),
    email: z.string().nullable(),
    name: z.string().nullable(),
    codeNeeded: z.boolean().meta({ description: 'Whether a code of the second factor must come with it' }),
  })
  .meta({ id: 'WelcomeInfo' });

/** Uses a one-time link: the first account also names itself and its firm; others need no password. */
export const welcome = z.strictObject({
  token: z.string().min(20).max(200),
  password: password.optional(),
  code: secondFactorCode.optional(),
  name: name.optional(),
  email: email.optional(),
  firmName: line(160).optional(),
});

/** The paper documents are laid out for, and the measures they are written in. */
export const papers = ['A4', 'Letter'] as const;
export const measureSystems = ['metric', 'us', 'both'] as const;
export type Paper = (typeof papers)[number];
export type MeasureSystem = (typeof measureSystems)[number];

const firmFields = {
  name: line(160),
  addressLines: z.array(line(120)).max(6),
  email: email.nullable(),
  phone: line(40).nullable(),
  layupRequiresClearing: z
    .boolean()
    .meta({ description: 'Whether findings for the next lay-up must be cleared too' }),
  beforeUseDays: z
    .int()
    .min(0)
    .max(90)
    .meta({ description: 'Days after issue by which findings “before next use” are due' }),
  layupDays: z.int().min(1).max(1100).nullable().meta({
    description: 'Days after issue by which findings for the next lay-up are due, where they must be cleared',
  }),
  layupDay: z
    .string()
    .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'Write the day as MM-DD, such as 03-31.')
    .refine((d) => !/^(02-(29|3)|(04|06|09|11)-31)/.test(d), 'There is no such day in every year.')
    .nullable()
    .meta({ description: 'Or the day of the year by which they are due, MM-DD', example: '03-31' }),
  reviewRequired: z.boolean().meta({
    description: 'Whether a second surveyor must approve the record before its report is issued',
  }),
  paper: z.enum(papers, 'Choose “A4” or “Letter”.').meta({ description: 'What documents are printed on' }),
  measures: z.enum(measureSystems, 'Choose “metric”, “us” or “both”.').meta({
    description: 'Lengths and masses in documents: metric, US customary, or metric with US beside it',
  }),
};
export const firm = z
  .object({
    id,
    ...firmFields,
    name: z.string(),
    email: z.string().nullable(),
    phone: z.string().nullable(),
    addressLines: z.array(z.string()),
    version: z.int(),
  })
  .meta({ id: 'Firm' });
export const firmPatch = z
  .strictObject(firmFields)
  .partial()
  .refine((f) => f.layupDays == null || f.layupDay == null, {
    path: ['layupDay'],
    message: 'Give days after issue or a day of the year, not both.',
  });

export const member = z
  .object({
    id,
    role: z.enum(firmRoles),
    name: z.string(),
    email: z.string(),
    qualifications: z.string(),
    joined: z.boolean(),
  })
  .meta({ id: 'Member' });
export const memberCreate = z.strictObject({
  role: z.enum(firmRoles),
  name,
  email,
  qualifications: text(200).default(''),
});
