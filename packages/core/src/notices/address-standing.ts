import type { Ctx } from '../context.ts';

type StandingCtx = Pick<Ctx, 'tx' | 'clock'>;

/** Notes that a mail server refused an address for good: what is gathered isn't mailed to it any more. */
export async function addressRefused(
  { tx, clock }: StandingCtx,
  { problem, ...person }: { problem: string } & ({ id: string } | { email: string }),
): Promise<void> {
  await tx.person.updateMany({
    where: { ...person, mailProblem: null },
    data: { mailProblem: problem, mailProblemAt: clock() },
  });
}

/** Notes that a mail server took something for an address, so that what is gathered goes there again. */
export async function addressTaken({ tx }: StandingCtx, email: string): Promise<void> {
  await tx.person.updateMany({
    where: { email, mailProblem: { not: null } },
    data: { mailProblem: null, mailProblemAt: null },
  });
}
