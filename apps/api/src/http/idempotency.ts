import { createHash } from 'node:crypto';
import { Refusal } from '@garboard/core/problems';
import type { Prisma, Tx } from '@garboard/db/database';
import type { FastifyReply } from 'fastify';

interface OnceInput {
  personId: string;
  key: string;
  route: string;
  fingerprint: string;
  reply: FastifyReply;
}

/** What was asked, in a form that tells a repeat from another request under the same key. */
export function fingerprintOf(method: string, url: string, body: unknown): string {
  return createHash('sha256')
    .update(JSON.stringify([method, url, body ?? null]))
    .digest('hex');
}

/**
 * Runs a create once for a key: a repeat gets the first answer. The key's row is written in the create's own
 * transaction, so a repeat that comes too early waits for the first to end.
 *
 * @throws Refusal `key-reused` when the key came with another request before.
 */
export async function once<T>(tx: Tx, input: OnceInput, run: () => Promise<T>): Promise<T> {
  if (input.key.length > 200 || input.key.length === 0) {
    throw new Refusal('invalid-input', 'An Idempotency-Key has 1 to 200 characters.');
  }
  const where = { personId: input.personId, key: input.key };
  const fresh = await tx.idempotencyKey.createMany({
    data: [{ ...where, route: input.route, fingerprint: input.fingerprint }],
    skipDuplicates: true,
  });
  if (fresh.count === 0) {
    const first = await tx.idempotencyKey.findUniqueOrThrow({ where: { personId_key: where } });
    if (first.fingerprint !== input.fingerprint) {
      throw new Refusal(
        'key-reused',
        'This Idempotency-Key was used for a different request. Make a new key for each new record.',
      );
    }
    input.reply.header('idempotency-replayed', 'true');
    return first.answer as T;
  }
  const answer = await run();
  await tx.idempotencyKey.update({
    where: { personId_key: where },
    data: { answer: JSON.parse(JSON.stringify(answer)) as Prisma.InputJsonValue },
  });
  return answer;
}
