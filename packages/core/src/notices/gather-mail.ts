import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';

/** A person gets at most one gathered message in this time, in milliseconds; what is urgent doesn't wait. */
const quietMs = 10 * 60_000;

type GatherCtx = Pick<Ctx, 'tx' | 'clock'>;

/**
 * Gathers everything that is due to be mailed to a person into one message and has it sent. A message that still
 * waits for a mail server takes it up, so that a server that comes back doesn't bring ten.
 *
 * @param input.firmIds whose notices may be gathered: those this transaction sees.
 * @returns whether there was anything; of two that gather at once one finds nothing.
 */
export async function gatherMail(
  ctx: GatherCtx,
  { personId, firmIds }: { personId: string; firmIds: readonly string[] },
): Promise<boolean> {
  const now = ctx.clock();
  const { id, isNew } = await openMessage(ctx, personId, firmIds, now);
  const gathered = await ctx.tx.notice.updateMany({
    where: { personId, firmId: { in: [...firmIds] }, mailAfter: { lte: now } },
    data: { mailId: id, mailAfter: null },
  });
  if (gathered.count === 0) {
    if (isNew) await ctx.tx.mail.delete({ where: { id } });
    return false;
  }
  if (isNew) await enqueue(ctx.tx, 'mail.deliver', { mailId: id });
  return true;
}

/** The message of this person that waits, held until the transaction ends, or a new one. */
async function openMessage(
  { tx }: GatherCtx,
  personId: string,
  firmIds: readonly string[],
  now: Date,
): Promise<{ id: string; isNew: boolean }> {
  const [waiting] = await tx.$queryRaw<{ id: string }[]>`
    UPDATE mails SET firm_ids = ARRAY(SELECT DISTINCT unnest(firm_ids || ${[...firmIds]}::uuid[]))
    WHERE id = (
      SELECT id FROM mails WHERE person_id = ${personId}::uuid AND state = 'waiting'
      ORDER BY id LIMIT 1 FOR UPDATE SKIP LOCKED)
    RETURNING id`;
  if (waiting) return { id: waiting.id, isNew: false };
  const id = newId();
  await tx.mail.create({ data: { id, personId, firmIds: [...firmIds], nextAttemptAt: now, createdAt: now } });
  return { id, isNew: true };
}

/** How many people one look gathers for. */
const batchSize = 200;

/**
 * Gathers what is due, for everybody whose last message is long enough ago. To be called for all firms.
 * @returns how many messages were begun or added to.
 */
export async function gatherDue(ctx: GatherCtx, firmIds: readonly string[]): Promise<number> {
  const now = ctx.clock();
  const quiet = new Date(now.getTime() - quietMs);
  const people = await ctx.tx.$queryRaw<{ id: string }[]>`
    SELECT DISTINCT n.person_id AS id FROM notices n
    WHERE n.mail_after <= ${now} AND NOT EXISTS (
      SELECT FROM mails m
      WHERE m.person_id = n.person_id AND m.created_at > ${quiet} AND m.state IN ('sending', 'sent'))
    LIMIT ${batchSize}`;
  let messages = 0;
  for (const { id } of people) {
    if (await gatherMail(ctx, { personId: id, firmIds })) messages += 1;
  }
  return messages;
}

/** Longer than a message waits in the queue for its first sending, in milliseconds. */
const lostAfterMs = 3 * 60_000;

/** Asks again for messages whose time has come: a server was away, a sender died, a job was lost. @returns how many */
export async function resendDue({ tx, clock }: GatherCtx): Promise<number> {
  const now = clock();
  const lost = new Date(now.getTime() - lostAfterMs);
  const due = await tx.mail.findMany({
    where: {
      state: { in: ['waiting', 'sending'] },
      OR: [{ attempts: { gt: 0 }, nextAttemptAt: { lte: now } }, { nextAttemptAt: { lte: lost } }],
    },
    select: { id: true },
    orderBy: { nextAttemptAt: 'asc' },
    take: batchSize,
  });
  for (const { id } of due) await enqueue(tx, 'mail.deliver', { mailId: id });
  return due.length;
}
