import { hashToken, newToken } from '@garboard/core/people/tokens';
import type { Database } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';

/** Whether anybody has an account here. */
export async function hasPeople(db: Database): Promise<boolean> {
  return (await db.prisma.person.findFirst({ select: { id: true } })) !== null;
}

/** A new link, good for one use within a day, by which the first account is made; earlier ones end. */
export async function firstAccountLink(db: Database, publicUrl: string): Promise<string> {
  const token = newToken();
  await db.prisma.oneTimeLink.deleteMany({ where: { kind: 'first-account' } });
  await db.prisma.oneTimeLink.create({
    data: {
      id: newId(),
      kind: 'first-account',
      tokenHash: hashToken(token),
      expiresAt: new Date(Date.now() + 86_400_000),
    },
  });
  return `${publicUrl}/welcome#token=${token}`;
}
