import { randomInt } from 'node:crypto';
import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { hashPassword } from './passwords.ts';

// Without letters and digits that are taken for one another on paper.
const alphabet = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
const howMany = 10;
const [markLength, codeLength] = [2, 12];

const letters = (n: number): string =>
  Array.from({ length: n }, () => alphabet[randomInt(alphabet.length)]).join('');

/** The beginning of a recovery code, by which it is found; the other ten characters, 50 random bits, are the secret. */
export const markOf = (code: string): string => code.slice(0, markLength);

/** Makes ten recovery codes in place of all earlier ones. Answers them as they are written down, `AB3D-EF4G-HJ5K`. */
export async function makeRecoveryCodes(ctx: Ctx, personId: string): Promise<string[]> {
  const marks = new Set<string>();
  while (marks.size < howMany) marks.add(letters(markLength));
  const codes = [...marks].map((mark) => mark + letters(codeLength - markLength));
  const hashes = await Promise.all(codes.map(hashPassword));
  await ctx.tx.recoveryCode.deleteMany({ where: { personId } });
  await ctx.tx.recoveryCode.createMany({
    data: codes.map((code, at) => ({ id: newId(), personId, mark: markOf(code), hash: hashes[at] ?? '' })),
  });
  return codes.map((code) => code.replace(/(.{4})(?=.)/g, '$1-'));
}
