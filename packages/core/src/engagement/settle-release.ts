import { isHeld, type ReleaseRule } from '@garboard/trade/engagement';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { ratesOf } from './firm-rates.ts';

interface OfSurvey {
  firmId: string;
  surveyId: string;
  /** The role in which the actor did what this follows from. */
  role: string;
  /** On whose behalf Garboard acts; left out when it is the actor. */
  behalf?: { id: string | null; name: string };
}

/**
 * Withholds what is issued of a survey from every party, or hands it over, as the rule fixed for it says. Does nothing
 * before the first issue.
 */
export async function settleRelease(ctx: Ctx, { firmId, surveyId, role, behalf }: OfSurvey): Promise<void> {
  const release = await ctx.tx.surveyRelease.findUnique({ where: { surveyId } });
  if (!release) return;
  const invoices = await ctx.tx.invoice.findMany({ where: { surveyId }, select: { state: true } });
  const rule = release.rule as ReleaseRule;
  const held = isHeld(rule, { wordGiven: release.wordAt !== null, invoices });
  const changed = await ctx.tx.survey.updateMany({ where: { id: surveyId, held: !held }, data: { held } });
  if (changed.count === 0) return;
  const parties = held
    ? []
    : await ctx.tx.party.findMany({ where: { surveyId, released: true }, select: { personId: true } });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: held ? 'report.held' : 'report.handed-over', role },
    ...(behalf ? { behalf } : {}),
    data: { rule },
    tell: parties.map((party) => party.personId),
  });
}

/** Fixes the firm's rule for a survey at its first issue, and withholds what is issued when the rule says so. */
export async function holdWhenIssued(ctx: Ctx, of: OfSurvey): Promise<void> {
  const { firmId, surveyId } = of;
  const { releaseRule } = await ratesOf(ctx, firmId);
  const made = await ctx.tx.surveyRelease.createMany({
    data: [{ firmId, surveyId, rule: releaseRule }],
    skipDuplicates: true,
  });
  if (made.count > 0) await settleRelease(ctx, of);
}
