import { X509Certificate } from 'node:crypto';
import type { SigningKey } from '@garboard/contract/signing-key';
import type { Prisma } from '@garboard/db/database';
import type { KeyPair } from './open-p12.ts';

type KeyRow = Prisma.SigningKeyGetPayload<object>;

/** A private key is sealed for one firm, so that its row can't be given to another. */
export const sealPurpose = (firmId: string): string => `signing key of firm ${firmId}`;

/** A certificate's name in words: the common name, and what else it says of the holder in brackets. */
function nameInWords(distinguished: string): string {
  const parts = distinguished.split('\n').map((part) => {
    const at = part.indexOf('=');
    // Commas and the like are written with a backslash before them.
    return { kind: part.slice(0, at), value: part.slice(at + 1).replace(/\\(.)/g, '$1') };
  });
  const common = parts.find((part) => part.kind === 'CN')?.value;
  const others = parts.filter((part) => part.value !== common).map((part) => part.value);
  if (common === undefined) return others.join(', ');
  return others.length > 0 ? `${common} (${others.join(', ')})` : common;
}

const curves: Record<string, string> = { prime256v1: 'P-256', secp384r1: 'P-384', secp521r1: 'P-521' };

/** What is kept beside a key, so that it can be shown without taking its certificate apart. */
export function keyFacts({ certificates }: Pick<KeyPair, 'certificates'>) {
  const [der] = certificates;
  if (!der) throw new Error('A key without a certificate can sign nothing.');
  const certificate = new X509Certificate(der);
  const { asymmetricKeyType, asymmetricKeyDetails: details } = certificate.publicKey;
  return {
    certificates: certificates.map((each) => each.toString('base64')),
    subject: nameInWords(certificate.subject),
    issuer: nameInWords(certificate.issuer),
    selfSigned: certificate.issuer === certificate.subject && certificate.verify(certificate.publicKey),
    serialNumber: certificate.serialNumber,
    fingerprint: certificate.fingerprint256.replaceAll(':', '').toLowerCase(),
    algorithm:
      asymmetricKeyType === 'rsa'
        ? `RSA ${details?.modulusLength}`
        : `ECDSA ${curves[details?.namedCurve ?? ''] ?? details?.namedCurve}`,
    validFrom: new Date(certificate.validFrom),
    validUntil: new Date(certificate.validTo),
  };
}

/** Whether a key may sign at this time, by its certificate. */
export function keyState(row: Pick<KeyRow, 'validFrom' | 'validUntil'>, now: Date): SigningKey['state'] {
  if (now < row.validFrom) return 'not-yet-valid';
  return now > row.validUntil ? 'expired' : 'usable';
}

export function presentSigningKey(row: KeyRow, now: Date): SigningKey {
  const { subject, issuer, selfSigned, serialNumber, fingerprint, algorithm, addedBy } = row;
  return {
    ...{ subject, issuer, selfSigned, serialNumber, fingerprint, algorithm, addedBy },
    validFrom: row.validFrom.toISOString(),
    validUntil: row.validUntil.toISOString(),
    state: keyState(row, now),
    addedAt: row.addedAt.toISOString(),
  };
}
