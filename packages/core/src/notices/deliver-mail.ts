import type { Ctx } from '../context.ts';
import { addressRefused } from './address-standing.ts';

/** A sender that dies is given up after this long, in milliseconds; longer than any mail server may take. */
const leaseMs = 10 * 60_000;

const minuteMs = 60_000;
/** Mail servers themselves give up after four or five days (RFC 5321, 4.5.4.1). */
const giveUpMs = 5 * 24 * 60 * minuteMs;

/** Wait before the next attempt after so many: 1, 2, 4 … minutes, an hour at most. */
export const retryWaitMs = (attempts: number): number => Math.min(60, 2 ** (attempts - 1)) * minuteMs;

export interface ClaimedMail {
  id: string;
  personId: string;
  firmIds: string[];
  attempts: number;
}

/** Takes a message that is due for sending; null when another has it, or it is settled or not due yet. */
export async function claimMail(
  { tx, clock }: Pick<Ctx, 'tx' | 'clock'>,
  mailId: string,
): Promise<ClaimedMail | null> {
  const now = clock();
  const [claimed] = await tx.mail.updateManyAndReturn({
    where: { id: mailId, state: { in: ['waiting', 'sending'] }, nextAttemptAt: { lte: now } },
    data: {
      state: 'sending',
      attempts: { increment: 1 },
      nextAttemptAt: new Date(now.getTime() + leaseMs),
    },
    select: { id: true, personId: true, firmIds: true, attempts: true },
  });
  return claimed ?? null;
}

/** What became of an attempt: `refused` for good by the mail server, the address itself or only this message. */
export type Outcome =
  | { state: 'sent' }
  | { state: 'dropped' }
  | { state: 'refused'; problem: string; address: boolean }
  | { state: 'away'; problem: string };

/**
 * Writes down what became of an attempt, unless another sender has taken over since. A server that is away is tried
 * again, later each time; an address that was refused is mailed no more.
 */
export async function settleMail(
  { tx, clock }: Pick<Ctx, 'tx' | 'clock'>,
  mail: ClaimedMail,
  outcome: Outcome,
): Promise<void> {
  const now = clock();
  const { createdAt } = await tx.mail.findUniqueOrThrow({
    where: { id: mail.id },
    select: { createdAt: true },
  });
  const givesUp = outcome.state === 'away' && now.getTime() - createdAt.getTime() > giveUpMs;
  const state = outcome.state === 'away' ? (givesUp ? 'given-up' : 'waiting') : outcome.state;
  await tx.mail.updateMany({
    where: { id: mail.id, state: 'sending', attempts: mail.attempts },
    data: {
      state,
      problem: 'problem' in outcome ? outcome.problem : null,
      nextAttemptAt: new Date(now.getTime() + retryWaitMs(mail.attempts)),
      ...(state === 'sent' ? { sentAt: now } : {}),
    },
  });
  if (outcome.state === 'refused' && outcome.address) {
    await addressRefused({ tx, clock }, { id: mail.personId, problem: outcome.problem });
  }
}
