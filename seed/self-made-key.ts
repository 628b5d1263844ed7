import { createPrivateKey, randomBytes, webcrypto } from 'node:crypto';
import type { KeyPair } from '@garboard/core/signing/open-p12';
import {
  BitString,
  Integer,
  ObjectIdentifier,
  PrintableString,
  Sequence,
  Set as SetOf,
  Utf8String,
} from 'asn1js';
import { Certificate, Extension, RelativeDistinguishedNames } from 'pkijs';

export interface SelfMade {
  /** Whom the certificate names, and the country it is said to be in (two letters). */
  firmName: string;
  country: string;
  validFrom: Date;
  validUntil: Date;
  /** RSA takes a good part of a second to make; a key of the curve P-256 a few milliseconds. */
  kind: 'rsa' | 'ec';
}

const algorithms = {
  rsa: {
    name: 'RSASSA-PKCS1-v1_5',
    modulusLength: 2048,
    publicExponent: new Uint8Array([1, 0, 1]),
    hash: 'SHA-256',
  },
  ec: { name: 'ECDSA', namedCurve: 'P-256' },
} as const;

/** A key with a certificate that it signed itself: for the demonstration and for tests, nobody vouches for it. */
export async function selfMadeKey(of: SelfMade): Promise<KeyPair> {
  const pair = await webcrypto.subtle.generateKey(algorithms[of.kind], true, ['sign', 'verify']);
  const certificate = new Certificate();
  certificate.version = 2;
  // Positive, whatever the first byte.
  certificate.serialNumber = new Integer({
    valueHex: new Uint8Array([0x01, ...randomBytes(15)]).buffer,
  });
  const named = distinguishedName([
    ['2.5.4.6', new PrintableString({ value: of.country })],
    ['2.5.4.10', new Utf8String({ value: of.firmName })],
    ['2.5.4.3', new Utf8String({ value: of.firmName })],
  ]);
  certificate.subject = named;
  certificate.issuer = named;
  certificate.notBefore.value = of.validFrom;
  certificate.notAfter.value = of.validUntil;
  certificate.extensions = [
    // digitalSignature and nonRepudiation.
    new Extension({
      extnID: '2.5.29.15',
      critical: true,
      extnValue: new BitString({ unusedBits: 6, valueHex: new Uint8Array([0xc0]).buffer }).toBER(),
    }),
  ];
  await certificate.subjectPublicKeyInfo.importKey(pair.publicKey);
  await certificate.sign(pair.privateKey, 'SHA-256');
  const pkcs8 = Buffer.from(await webcrypto.subtle.exportKey('pkcs8', pair.privateKey));
  return {
    key: createPrivateKey({ key: pkcs8, format: 'der', type: 'pkcs8' }),
    certificates: [Buffer.from(certificate.toSchema(true).toBER())],
  };
}

/** A name of one part a level; pkijs by itself would put all of them into one. */
function distinguishedName(parts: [string, PrintableString | Utf8String][]): RelativeDistinguishedNames {
  const levels = parts.map(([type, value]) => {
    const part = new Sequence({ value: [new ObjectIdentifier({ value: type }), value] });
    return new SetOf({ value: [part] });
  });
  return RelativeDistinguishedNames.fromBER(new Sequence({ value: levels }).toBER());
}
