import { reportKinds } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, line, sha256 } from './common.ts';
import { longestShareDays, shortestPasscode } from './limits.ts';

const passcode = z
  .string()
  .min(shortestPasscode, `Choose a passcode of ${shortestPasscode} characters or more.`)
  .max(100);

/** A link that shows one issued report to whoever holds it. */
export const shareLink = z
  .object({
    id,
    reportId: id,
    label: z.string().meta({ description: 'For whom it was made, in its maker’s words' }),
    passcodeSet: z.boolean(),
    expiresAt: instant,
    viewLimit: z.int().nullable(),
    views: z.int(),
    lastViewAt: instant.nullable(),
    createdAt: instant,
    madeBy: z.string(),
    revokedAt: instant.nullable(),
    works: z.boolean().meta({ description: 'Whether it still opens: not ended, expired or used up' }),
  })
  .meta({ id: 'ShareLink' });

export const shareLinkCreate = z.strictObject({
  label: line(120),
  days: z.int().min(1).max(longestShareDays),
  passcode: passcode.nullable().default(null),
  viewLimit: z.int().min(1).max(1000).nullable().default(null),
});
export const shareLinkCreated = shareLink
  .extend({ url: z.string().meta({ description: 'The link itself, shown this once' }) })
  .meta({ id: 'ShareLinkCreated' });

export const shareViewing = z
  .object({ id, openedAt: instant, device: z.string() })
  .meta({ id: 'ShareViewing', description: 'One opening of a share link' });

const token = z.string().min(20).max(200);
export const shareLinkLookup = z.strictObject({ token });
export const shareLinkInfo = z
  .object({
    passcodeNeeded: z.boolean(),
    viewsLeft: z.int().nullable().meta({ description: 'Openings left, or null without a limit' }),
    expiresAt: instant,
  })
  .meta({ id: 'ShareLinkInfo' });

export const sharedReportOpen = z.strictObject({ token, passcode: z.string().max(100).optional() });

/** An issued report as the holder of a link sees it. */
export const sharedReport = z
  .object({
    id: id.meta({ description: 'Of this opening; a cookie set with it lets its holder read on' }),
    expiresAt: instant.meta({ description: 'Until when it can be read on without opening the link again' }),
    linkExpiresAt: instant,
    sharedBy: z.string(),
    firmName: z.string(),
    vesselName: z.string(),
    surveyNumber: z.string(),
    kind: z.enum(reportKinds),
    revision: z.int(),
    issuedAt: instant,
    superseded: z.boolean().meta({ description: 'Whether a later revision was issued' }),
    pages: z.int().nullable(),
    bytes: z.int().nullable(),
    sha256: sha256.nullable(),
    verificationCode: z.string().nullable(),
  })
  .meta({ id: 'SharedReport' });
