import { eventSummary } from '@garboard/trade/event-words';
import type { Ctx } from '../context.ts';

/** What one person is told of an event. */
export interface Notice {
  email: string;
  name: string;
  /** Such as `Grey Wagtail, survey 2026-0042`. */
  about: string;
  sentence: string;
  firmName: string;
  /** Where it can be read, below the address of the installation. */
  path: string;
}

/** The notice of an event for a person; null when it no longer concerns them. */
export async function noticeFor(
  ctx: Ctx,
  { eventId, personId }: { eventId: string; personId: string },
): Promise<Notice | null> {
  const event = await ctx.tx.event.findUnique({ where: { id: eventId } });
  if (!event?.surveyId) return null;
  const survey = await ctx.tx.survey.findUnique({
    where: { id: event.surveyId },
    select: {
      number: true,
      vessel: { select: { name: true } },
      firm: { select: { name: true, members: { where: { personId }, select: { id: true } } } },
      parties: { where: { personId, released: true }, select: { id: true } },
    },
  });
  const person = await ctx.tx.person.findUnique({ where: { id: personId } });
  if (!survey || !person) return null;
  // Reviews are the firm's own affair; everything else is told to those who may still read it.
  const inside = survey.firm.members.length > 0;
  if (!inside && (event.kind.startsWith('review.') || survey.parties.length === 0)) return null;
  const place = event.kind.startsWith('review.')
    ? `/surveys/${event.surveyId}/review`
    : event.findingId
      ? `/findings/${event.findingId}`
      : `/surveys/${event.surveyId}`;
  return {
    email: person.email,
    name: person.name,
    about: `${survey.vessel.name}, survey ${survey.number}`,
    sentence: eventSummary(event.kind, event.data as Record<string, unknown>),
    firmName: survey.firm.name,
    path: place,
  };
}
