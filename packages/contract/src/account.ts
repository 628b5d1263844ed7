import { firmRoles, partyRoles } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, email, id, instant, line } from './common.ts';

export const password = z.string().min(12, 'Choose a password of 12 characters or more.').max(200);

/** A code of the authenticator app, or a recovery code; blanks and hyphens don't matter. */
export const secondFactorCode = z
  .string()
  .max(40)
  .overwrite((s) => s.replace(/[\s-]/g, '').toUpperCase())
  .regex(/^(\d{6}|[0-9A-Z]{12})$/, 'A code has 6 digits; a recovery code has 12 letters and digits.');

export const signInLinkAsk = z.strictObject({ email });
export const signInLinkAsked = z
  .object({ minutes: z.int().meta({ description: 'How long the link works once it has been sent' }) })
  .meta({
    id: 'SignInLinkAsked',
    description: 'The same for every address: a link is sent if it has an account',
  });

/** One place where the person is signed in. */
export const session = z
  .object({
    id,
    device: z.string().meta({ description: 'The browser in words; empty when it said nothing of itself' }),
    address: z.string().meta({ description: 'The network address last used' }),
    createdAt: instant,
    lastSeenAt: instant.meta({ description: 'To within five minutes' }),
    expiresAt: instant,
    current: z.boolean().meta({ description: 'Whether this is the session that asks' }),
  })
  .meta({ id: 'Session' });

/** How the person signs in. */
export const signInMeans = z
  .object({
    email: z.string(),
    passwordSet: z.boolean(),
    secondFactorSince: instant.nullable().meta({ description: 'Since when codes are asked for, or null' }),
    recoveryCodesLeft: z.int(),
    fresh: z.boolean().meta({
      description:
        'Whether this session is so new that the password need not be given again for most changes',
    }),
    byLink: z.boolean().meta({
      description: 'Whether it began with a link: while it is new, a new password needs no old one',
    }),
  })
  .meta({ id: 'SignInMeans' });

/** What shows again who is at the keyboard, unless the session is new. */
const currentPassword = z.string().min(1).max(200).optional();

export const passwordChange = z.strictObject({ password, currentPassword });

export const secondFactorBegin = z.strictObject({ currentPassword });
export const secondFactorBegun = z
  .object({
    secret: z.string().meta({ description: 'For typing into an authenticator app, base 32' }),
    uri: z.string().meta({ description: 'The same as an otpauth address, for a QR code' }),
  })
  .meta({ id: 'SecondFactorBegun' });
export const secondFactorProof = z.strictObject({ code: secondFactorCode });
export const recoveryCodes = z
  .object({ recoveryCodes: z.array(z.string()).meta({ description: 'Shown once; each works once' }) })
  .meta({ id: 'RecoveryCodes' });
export const secondFactorOn = recoveryCodes
  .extend({
    token: z.string().meta({ description: 'Of the session from now on; the one that asked has ended' }),
    expiresAt: instant,
  })
  .meta({ id: 'SecondFactorOn' });

export const keyAccess = ['read', 'write'] as const;

/** A key by which a program acts for a person, in one role in one firm. */
export const apiKey = z
  .object({
    id,
    name: z.string(),
    firm: z.object({ id, name: z.string() }),
    role: z.enum([...firmRoles, ...partyRoles]),
    access: z.enum(keyAccess),
    beginning: z.string().meta({ description: 'The first characters, to tell keys apart' }),
    createdAt: instant,
    expiresAt: instant.nullable(),
    lastUsedAt: instant.nullable(),
  })
  .meta({ id: 'ApiKey' });
export const apiKeyCreate = z.strictObject({
  name: line(80),
  firmId: id,
  role: z.enum([...firmRoles, ...partyRoles]),
  access: z.enum(keyAccess),
  expiresOn: day
    .nullable()
    .default(null)
    .meta({ description: 'The last day on which it works; null: no end' }),
  currentPassword,
});
export const apiKeyCreated = apiKey
  .extend({ token: z.string().meta({ description: 'The key itself, shown this once' }) })
  .meta({ id: 'ApiKeyCreated' });
