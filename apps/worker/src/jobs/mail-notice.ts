import type { JobData } from '@garboard/contract/jobs';
import { noticeFor } from '@garboard/core/events/notice-for';
import { inTransaction } from '@garboard/db/database';
import type { JobDeps } from '../job-deps.ts';
import { noticeMail } from './notice-mail.ts';

/** Tells one person by mail what happened to a survey; nobody who has lost sight of it since. */
export async function mailNoticeJob(
  deps: JobDeps,
  { firmId, eventId, personId }: JobData<'mail.notice'>,
): Promise<void> {
  const { db, store, clock, log, env, mail } = deps;
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  const notice = await inTransaction(db, [firmId], (tx) =>
    noticeFor({ actor, tx, store, clock, log }, { eventId, personId }),
  );
  if (!notice) return log.info({ eventId, personId }, 'nobody to be told of this any more');
  await mail.sendMail({
    to: notice.email,
    // The same message however often it is tried.
    messageId: `${eventId}.${personId}@${new URL(env.publicUrl).hostname}`,
    ...noticeMail(notice, `${env.publicUrl}${notice.path}`),
  });
}
