import { createHash, type KeyObject, sign } from 'node:crypto';
import { type BaseBlock, Null, ObjectIdentifier, OctetString, Sequence } from 'asn1js';
import {
  AlgorithmIdentifier,
  Attribute,
  Certificate,
  ContentInfo,
  EncapsulatedContentInfo,
  IssuerAndSerialNumber,
  SignedAndUnsignedAttributes,
  SignedData,
  SignerInfo,
} from 'pkijs';

/** A private key and the certificates that speak for it (DER), its own first. */
export interface SigningPair {
  key: KeyObject;
  certificates: readonly Buffer[];
}

const oid = {
  data: '1.2.840.113549.1.7.1',
  signedData: '1.2.840.113549.1.7.2',
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  sha256: '2.16.840.1.101.3.4.2.1',
  sha256WithRsa: '1.2.840.113549.1.1.11',
  sha256WithEcdsa: '1.2.840.10045.4.3.2',
} as const;

const bytesOf = (block: BaseBlock): Buffer => Buffer.from(block.toBER());
/** A view of exactly these bytes: the buffers of small files share one. */
const exact = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

/**
 * Signs a digest as PAdES baseline B-B asks (EN 319 142-1, EN 319 122-1): a detached CMS with content type, message
 * digest and signing-certificate-v2 as its signed attributes, and without a signing time, which stands in the PDF.
 *
 * @param digest SHA-256 of what is signed.
 * @returns the CMS, DER.
 */
export function cmsSignature(digest: Buffer, { key, certificates }: SigningPair): Buffer {
  const parsed = certificates.map((der) => Certificate.fromBER(exact(der)));
  const [own] = parsed;
  const [ownDer] = certificates;
  if (!own || !ownDer) throw new Error('A signature needs the certificate of its key.');
  const attributes = [
    new Attribute({ type: oid.contentType, values: [new ObjectIdentifier({ value: oid.data })] }),
    new Attribute({ type: oid.messageDigest, values: [new OctetString({ valueHex: exact(digest) })] }),
    new Attribute({ type: oid.signingCertificateV2, values: [signingCertificate(ownDer)] }),
    // DER wants the members of a set in the order of their bytes.
  ].sort((a, b) => Buffer.compare(bytesOf(a.toSchema()), bytesOf(b.toSchema())));
  const signedAttrs = new SignedAndUnsignedAttributes({ type: 0, attributes });
  const signerInfo = new SignerInfo({
    version: 1,
    sid: new IssuerAndSerialNumber({ issuer: own.issuer, serialNumber: own.serialNumber }),
    digestAlgorithm: new AlgorithmIdentifier({ algorithmId: oid.sha256 }),
    signedAttrs,
    signatureAlgorithm: signatureAlgorithm(key),
    signature: new OctetString({ valueHex: exact(sign('sha256', asSet(signedAttrs), key)) }),
  });
  const signedData = new SignedData({
    version: 1,
    digestAlgorithms: [new AlgorithmIdentifier({ algorithmId: oid.sha256 })],
    encapContentInfo: new EncapsulatedContentInfo({ eContentType: oid.data }),
    certificates: parsed,
    signerInfos: [signerInfo],
  });
  const content = new ContentInfo({ contentType: oid.signedData, content: signedData.toSchema(true) });
  return bytesOf(content.toSchema());
}

/** Room a CMS of this pair needs at most, in bytes. */
export const cmsRoom = ({ certificates }: Pick<SigningPair, 'certificates'>): number =>
  certificates.reduce((sum, der) => sum + der.length, 2048);

/** ESS signing-certificate-v2 (RFC 5035): by SHA-256, which is its default and therefore not named. */
function signingCertificate(der: Buffer): Sequence {
  const certHash = new OctetString({ valueHex: exact(createHash('sha256').update(der).digest()) });
  const essCertId = new Sequence({ value: [certHash] });
  return new Sequence({ value: [new Sequence({ value: [essCertId] })] });
}

/** The attributes as they are signed: tagged as a set, though they are kept under a tag of their own. */
function asSet(attributes: SignedAndUnsignedAttributes): Buffer {
  const bytes = bytesOf(attributes.toSchema());
  bytes[0] = 0x31;
  return bytes;
}

function signatureAlgorithm(key: KeyObject): AlgorithmIdentifier {
  return key.asymmetricKeyType === 'ec'
    ? new AlgorithmIdentifier({ algorithmId: oid.sha256WithEcdsa })
    : new AlgorithmIdentifier({ algorithmId: oid.sha256WithRsa, algorithmParams: new Null() });
}
