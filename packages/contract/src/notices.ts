import { languages } from '@garboard/trade/languages';
import { noticeTopics, noticeWays } from '@garboard/trade/notice-kinds';
import { z } from 'zod';
import { id, instant, page, pageQuery, timeZone } from './common.ts';

/** One thing that a person is told. */
export const notice = z
  .object({
    id,
    kind: z.string(),
    topic: z.enum(noticeTopics),
    at: instant,
    read: z.boolean(),
    about: z.string().meta({ description: 'The boat and the survey, or the firm' }),
    sentence: z.string(),
    path: z.string().meta({ description: 'The page of the portal where it is read' }),
    surveyId: id.nullable(),
    findingId: id.nullable(),
  })
  .meta({ id: 'Notice' });
export type Notice = z.output<typeof notice>;

export const noticePage = page(notice).meta({ id: 'NoticePage' });
export const noticeQuery = pageQuery.extend({
  unread: z.stringbool().default(false).meta({ description: 'Only those that were not read yet' }),
});

export const unreadCount = z
  .object({ unread: z.int().meta({ description: 'At most 100, which means 100 or more' }) })
  .meta({ id: 'UnreadCount' });

/** Which are read now: those named, or the whole list up to and with the newest that was shown. */
export const noticesRead = z.union(
  [z.strictObject({ ids: z.array(id).min(1).max(200) }), z.strictObject({ upTo: id })],
  'Give either ids or upTo.',
);

const ways = z.enum(noticeWays);

/** How a person is told of things. */
export const noticeSettings = z
  .object({
    language: z.enum(languages),
    timeZone: z.string().nullable().meta({ description: 'Null: times are told as the survey does' }),
    topics: z.record(z.enum(noticeTopics), ways),
    mailProblem: z.object({ at: instant, answer: z.string() }).nullable().meta({
      description: 'What the mail server said when it refused this address; nothing is mailed since',
    }),
  })
  .meta({ id: 'NoticeSettings' });
export type NoticeSettings = z.output<typeof noticeSettings>;

export const noticeSettingsPatch = z
  .strictObject({
    language: z.enum(languages, 'Choose one of the languages offered.'),
    timeZone: timeZone.nullable(),
    topics: z.partialRecord(z.enum(noticeTopics), ways),
  })
  .partial();
