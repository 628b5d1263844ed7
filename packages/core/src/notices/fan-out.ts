import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { type NoticeRule, noticeRule, wayOf } from '@garboard/trade/notice-kinds';
import type { Ctx } from '../context.ts';
import { audienceOf } from './audience.ts';
import { gatherMail } from './gather-mail.ts';
import { mailTime } from './mail-time.ts';
import { noticeFacts } from './notice-facts.ts';

/** Tells people of an event, each once however often it is asked: in their list, and by mail as each wishes. */
export async function fanOut(
  ctx: Ctx,
  { eventId, personIds }: { eventId: string; personIds: readonly string[] },
): Promise<{ told: number }> {
  const event = await ctx.tx.event.findUnique({ where: { id: eventId } });
  const rule = event && noticeRule(event.kind);
  if (!event || !rule) return { told: 0 };
  const told = await audienceOf(ctx, event, rule, personIds);
  if (told.length === 0) return { told: 0 };
  const facts = await noticeFacts(ctx, event);
  const people = await ctx.tx.person.findMany({
    where: { id: { in: told } },
    select: {
      id: true,
      timeZone: true,
      joinedAt: true,
      mailProblem: true,
      noticePreferences: { where: { topic: rule.topic }, select: { how: true } },
    },
  });
  const { firmId, surveyId, findingId, kind } = event;
  const made = await ctx.tx.notice.createManyAndReturn({
    data: people.map((person) => ({
      id: newId(),
      ...{ personId: person.id, firmId, eventId, surveyId, findingId, kind },
      topic: rule.topic,
      facts: facts as unknown as Prisma.InputJsonObject,
      at: event.at,
      mailAfter: timeFor(ctx, person, rule, facts.timeZone),
    })),
    skipDuplicates: true,
    select: { personId: true, mailAfter: true },
  });
  for (const { personId, mailAfter } of rule.urgent ? made : []) {
    if (mailAfter) await gatherMail(ctx, { personId, firmIds: [firmId] });
  }
  return { told: made.length };
}

interface Told {
  joinedAt: Date | null;
  timeZone: string | null;
  mailProblem: string | null;
  noticePreferences: { how: string }[];
}

function timeFor(ctx: Ctx, person: Told, rule: NoticeRule, surveyZone: string): Date | null {
  // Whoever was never here gets the invitation itself, with its link.
  if (rule.invites && person.joinedAt === null) return null;
  // An address that was refused for good gets nothing more until it is seen to.
  if (person.mailProblem !== null) return null;
  const way = wayOf(rule.topic, person.noticePreferences[0]?.how);
  return mailTime(ctx.clock(), { way, zone: person.timeZone ?? surveyZone, rule });
}
