import type { NoticeSettings, noticeSettingsPatch } from '@garboard/contract/notices';
import { languageOf } from '@garboard/trade/languages';
import { type NoticeTopic, noticeTopics, wayOf, waysOf } from '@garboard/trade/notice-kinds';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { invalidField } from '../problems.ts';
import { readerOf } from './reader-of.ts';

/** How a person is told of things. @throws Refusal `not-allowed` */
export async function getNoticeSettings(ctx: Ctx): Promise<NoticeSettings> {
  const person = await ctx.tx.person.findUniqueOrThrow({
    where: { id: readerOf(ctx.actor) },
    select: {
      language: true,
      timeZone: true,
      mailProblem: true,
      mailProblemAt: true,
      noticePreferences: { select: { topic: true, how: true } },
    },
  });
  const chosen = new Map(person.noticePreferences.map(({ topic, how }) => [topic, how]));
  const { mailProblem, mailProblemAt } = person;
  return {
    language: languageOf(person.language),
    timeZone: person.timeZone,
    topics: Object.fromEntries(
      noticeTopics.map((topic) => [topic, wayOf(topic, chosen.get(topic))]),
    ) as NoticeSettings['topics'],
    mailProblem:
      mailProblem !== null && mailProblemAt ? { at: mailProblemAt.toISOString(), answer: mailProblem } : null,
  };
}

/**
 * Changes how a person is told of things from now on; what waits for a digest already keeps its time.
 *
 * @throws Refusal `not-allowed`; `invalid-input` for a way that a topic doesn't have
 */
export async function updateNoticeSettings(
  ctx: Ctx,
  patch: z.output<typeof noticeSettingsPatch>,
): Promise<NoticeSettings> {
  const personId = readerOf(ctx.actor);
  const { topics = {}, ...fields } = patch;
  await ctx.tx.person.update({ where: { id: personId }, data: fields });
  for (const [topic, how] of Object.entries(topics) as [NoticeTopic, string][]) {
    if (!waysOf(topic).some((way) => way === how)) {
      throw invalidField(`/topics/${topic}`, `Choose one of ${waysOf(topic).join(', ')}.`);
    }
    await ctx.tx.noticePreference.upsert({
      where: { personId_topic: { personId, topic } },
      create: { personId, topic, how },
      update: { how },
    });
  }
  return getNoticeSettings(ctx);
}

/** Has mail to the person's address tried again after a server refused it. @throws Refusal `not-allowed` */
export async function retryMailAddress(ctx: Ctx): Promise<void> {
  await ctx.tx.person.update({
    where: { id: readerOf(ctx.actor) },
    data: { mailProblem: null, mailProblemAt: null },
  });
}
