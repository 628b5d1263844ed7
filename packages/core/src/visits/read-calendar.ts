import { dayIn } from '@garboard/trade/due-dates';
import { type VisitAnswer, visitAnswerLabels } from '@garboard/trade/engagement';
import { type AttendanceCondition, attendanceConditionLabels } from '@garboard/trade/vocabulary';
import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import { actorId, firmRole, type PersonActor } from '../access/actor.ts';
import { ownParties } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';

/** How long a visit stays in the calendar after it ended, in days. */
const keptDays = 90;
/** Most entries of a calendar; the latest are kept. */
const most = 2_000;

/**
 * A person's visits as iCalendar (RFC 5545): those they were asked to and haven't declined, those of surveys they
 * sign, and of firms where they are principal or in the office all. Times are in UTC (3.3.5, form 2), which every
 * calendar shows in its reader's own zone; the local time where the boat lies is in the words.
 */
export async function readCalendar(
  ctx: Ctx,
  { person, publicUrl }: { person: PersonActor; publicUrl: string },
): Promise<string> {
  const since = new Date(ctx.clock().getTime() - keptDays * 86_400_000);
  const whole = person.memberships.filter((m) => m.role !== 'surveyor').map((m) => m.firmId);
  const signing = person.memberships.map((m) => m.firmId);
  const rows = await ctx.tx.visit.findMany({
    where: {
      endsAt: { gte: since },
      OR: [
        { firmId: { in: whole } },
        { firmId: { in: signing }, survey: { surveyorId: person.personId } },
        {
          asks: {
            some: { personId: person.personId, answer: { not: 'declined' }, party: ownParties(person) },
          },
        },
      ],
    },
    include: {
      asks: { orderBy: { id: 'asc' } },
      survey: {
        select: {
          number: true,
          timeZone: true,
          vessel: { select: { name: true } },
          firm: { select: { name: true } },
        },
      },
    },
    orderBy: [{ startsAt: 'desc' }, { id: 'asc' }],
    take: most,
  });
  const calendar = ical({
    name: 'Garboard visits',
    prodId: { company: 'Garboard', product: 'Visits', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: 3_600,
  });
  const host = new URL(publicUrl).hostname;
  for (const row of rows.reverse()) {
    const { survey } = row;
    calendar.createEvent({
      // Never another one for the same visit (3.8.4.7), so that a move moves the entry.
      id: `visit-${row.id}@${host}`,
      sequence: row.sequence,
      stamp: row.updatedAt,
      start: row.startsAt,
      end: row.endsAt,
      summary: `Survey of ${survey.vessel.name}, ${conditionWords(row.condition)}`,
      location: row.place,
      description: describe(person, row),
      url: new URL(`/surveys/${row.surveyId}/engagement`, publicUrl).href,
      status: statusOf(person, row),
    });
  }
  return calendar.toString();
}

interface CalendarVisit {
  state: string;
  firmId: string;
  startsAt: Date;
  endsAt: Date;
  note: string;
  asks: readonly { personId: string; name: string; answer: string; note: string }[];
  survey: { number: string; timeZone: string; firm: { name: string } };
}

const conditionWords = (condition: string): string =>
  attendanceConditionLabels[condition as AttendanceCondition].toLowerCase();

function statusOf(person: PersonActor, visit: CalendarVisit): ICalEventStatus {
  if (visit.state === 'cancelled') return ICalEventStatus.CANCELLED;
  const staff = firmRole(person, visit.firmId) !== null;
  const waiting = visit.asks.some(
    (ask) => ask.answer === 'asked' && (staff || ask.personId === actorId(person)),
  );
  return waiting && visit.state === 'arranged' ? ICalEventStatus.TENTATIVE : ICalEventStatus.CONFIRMED;
}

/** What the entry says: whose survey, when where she lies, what to know; for the firm who answered what. */
function describe(person: PersonActor, visit: CalendarVisit): string {
  const { survey, startsAt, endsAt } = visit;
  const { timeZone } = survey;
  const time = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' });
  const sameDay = dayIn(timeZone, startsAt) === dayIn(timeZone, endsAt);
  const until = sameDay ? time.format(endsAt) : `${time.format(endsAt)} on ${dayIn(timeZone, endsAt)}`;
  const answers =
    firmRole(person, visit.firmId) === null
      ? []
      : visit.asks.map((ask) => {
          const answer = visitAnswerLabels[ask.answer as VisitAnswer].toLowerCase();
          return `${ask.name}: ${answer}${ask.note === '' ? '' : `, “${ask.note}”`}`;
        });
  return [
    `Survey ${survey.number} by ${survey.firm.name}.`,
    `${time.format(startsAt)} to ${until}, ${timeZone} time.`,
    ...(visit.note === '' ? [] : [visit.note]),
    ...answers,
  ].join('\n');
}
