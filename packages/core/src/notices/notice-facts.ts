import type { NoticeFacts } from '@garboard/trade/notice-words/sayable';
import { z } from 'zod';
import type { Ctx } from '../context.ts';
import { issuedTitle } from '../findings/load-finding.ts';

/** What the sentence of a notice needs, kept with it as it was when it happened. */
export const noticeFactsForm = z.object({
  firm: z.string(),
  actor: z.string(),
  vessel: z.string().nullable(),
  survey: z.string().nullable(),
  timeZone: z.string(),
  finding: z.object({ number: z.number(), title: z.string(), dueOn: z.string().nullable() }).nullable(),
  data: z.record(z.string(), z.unknown()),
}) satisfies z.ZodType<NoticeFacts>;

/** The facts of an event. */
export async function noticeFacts(
  ctx: Ctx,
  event: {
    firmId: string;
    surveyId: string | null;
    findingId: string | null;
    actorName: string;
    data: unknown;
  },
): Promise<NoticeFacts> {
  const firm = await ctx.tx.firm.findUniqueOrThrow({ where: { id: event.firmId }, select: { name: true } });
  const survey = event.surveyId
    ? await ctx.tx.survey.findUnique({
        where: { id: event.surveyId },
        select: { number: true, timeZone: true, vessel: { select: { name: true } } },
      })
    : null;
  const finding = event.findingId
    ? await ctx.tx.finding.findUnique({ where: { id: event.findingId } })
    : null;
  return {
    firm: firm.name,
    actor: event.actorName,
    vessel: survey?.vessel.name ?? null,
    survey: survey?.number ?? null,
    timeZone: survey?.timeZone ?? 'UTC',
    finding: finding && {
      number: finding.number,
      title: issuedTitle(finding),
      dueOn: finding.dueOn?.toISOString().slice(0, 10) ?? null,
    },
    data: (event.data ?? {}) as Record<string, unknown>,
  };
}
