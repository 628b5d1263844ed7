import { randomBytes } from 'node:crypto';
import { codeLength, groupedCode } from '@garboard/contract/verification-code';

const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** A new code by which a document can be looked up, of 100 random bits, and the address that looks it up. */
export function newVerification(publicUrl: string): { code: string; url: string } {
  const code = Array.from(randomBytes(codeLength), (byte) => letters[byte & 31]).join('');
  return { code, url: `${publicUrl}/verify/${groupedCode(code)}` };
}
