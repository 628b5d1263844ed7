import { z } from 'zod';
import { instant, sha256 } from './common.ts';
import { maxP12Bytes } from './limits.ts';

const base64 = z
  .base64('Send the P12 file’s bytes as base64.')
  .max(Math.ceil(maxP12Bytes / 3) * 4, `The P12 file may have ${maxP12Bytes / 1000} kB at most.`);

/** The firm's certificate and private key as one PKCS #12 file, and the passphrase that opens it. */
export const signingKeyUpload = z.strictObject({
  p12: base64.meta({ description: 'The P12 (PKCS #12) file, base64' }),
  passphrase: z.string().max(400),
});

/** What may be known of the key that signs a firm's documents; the private key never leaves the server. */
export const signingKey = z
  .object({
    subject: z.string().meta({ description: 'Whom the certificate names' }),
    issuer: z.string().meta({ description: 'Who issued it' }),
    selfSigned: z.boolean(),
    serialNumber: z.string(),
    fingerprint: sha256.meta({ description: 'SHA-256 of the certificate' }),
    algorithm: z.string().meta({ example: 'RSA 2048' }),
    validFrom: instant,
    validUntil: instant,
    state: z.enum(['usable', 'expired', 'not-yet-valid']),
    addedAt: instant,
    addedBy: z.string(),
  })
  .meta({ id: 'SigningKey' });
export type SigningKey = z.infer<typeof signingKey>;

/** `key` is null while the firm has none, and nothing can be issued. */
export const signingKeyAnswer = z.object({ key: signingKey.nullable() }).meta({ id: 'SigningKeyAnswer' });
