import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto';
import forge from 'node-forge';
import { invalidField } from '../problems.ts';

/** A private key with the certificates that speak for it, its own first. */
export interface KeyPair {
  key: KeyObject;
  /** DER. */
  certificates: Buffer[];
}

const { asn1, pki, pkcs12 } = forge;
const derOf = (tree: forge.asn1.Asn1): Buffer => Buffer.from(asn1.toDer(tree).getBytes(), 'binary');
const refuse = (detail: string) => invalidField('/p12', detail);

// Usual files ask for 2 048 rounds, careful ones for some hundred thousand; more would only hold up the server.
const maxRounds = 1_000_000;

/**
 * Opens a P12 (PKCS #12) file: files of certification authorities, old and new encryption, RSA and elliptic curves.
 *
 * @throws Refusal `invalid-input` saying what is wrong with the file or that the passphrase doesn't open it.
 */
export function openP12(bytes: Buffer, passphrase: string): KeyPair {
  const bags = readBags(bytes, passphrase);
  const [key, ...others] = bags.keys;
  if (!key) throw refuse('This P12 file holds no private key. Export the certificate together with its key.');
  if (others.length > 0) throw refuse('This P12 file holds several keys. Export the one that should sign.');
  const own = bags.certificates.findIndex((c) => c.checkPrivateKey(key));
  const certificate = bags.certificates[own];
  if (!certificate) throw refuse('This P12 file holds no certificate for its key. Export both together.');
  refuseUnfit(certificate, key);
  const issuers = bags.certificates.filter((_, index) => index !== own);
  return { key, certificates: [certificate, ...issuers].map((c) => c.raw) };
}

function readBags(bytes: Buffer, passphrase: string) {
  const tree = parse(bytes);
  let p12: forge.pkcs12.Pkcs12Pfx;
  try {
    p12 = unlock(tree, passphrase);
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    if (/MAC|password|decrypt/i.test(message)) {
      throw invalidField('/passphrase', 'This passphrase does not open the file. Check it and try again.');
    }
    throw refuse('This P12 file could not be read. Export it again with the usual settings.');
  }
  const all = p12.safeContents.flatMap((contents) => contents.safeBags);
  const { keyBag, pkcs8ShroudedKeyBag, certBag } = pki.oids;
  const keys = all
    .filter((bag) => bag.type === keyBag || bag.type === pkcs8ShroudedKeyBag)
    .map((bag) => {
      const inner = bag.key ? pki.wrapRsaPrivateKey(pki.privateKeyToAsn1(bag.key)) : bag.asn1;
      return createPrivateKey({ key: derOf(inner), format: 'der', type: 'pkcs8' });
    });
  const certificates = all
    .filter((bag) => bag.type === certBag)
    .map((bag) => new X509Certificate(derOf(bag.cert ? pki.certificateToAsn1(bag.cert) : bag.asn1)));
  return { keys, certificates };
}

function unlock(tree: forge.asn1.Asn1, passphrase: string): forge.pkcs12.Pkcs12Pfx {
  try {
    return pkcs12.pkcs12FromAsn1(tree, false, passphrase);
  } catch (error) {
    const encoded = forge.util.encodeUtf8(passphrase);
    if (encoded === passphrase || !Array.isArray(tree.value)) throw error;
    // In one file the seal is made with the letters of the passphrase and the newer encryption with their UTF-8.
    // The library uses one form for both, so the seal is left out: a wrong passphrase decrypts to nonsense.
    try {
      return pkcs12.pkcs12FromAsn1({ ...tree, value: tree.value.slice(0, 2) }, false, encoded);
    } catch {
      throw error;
    }
  }
}

function parse(bytes: Buffer): forge.asn1.Asn1 {
  let tree: forge.asn1.Asn1;
  try {
    tree = asn1.fromDer(forge.util.createBuffer(bytes.toString('binary')));
  } catch {
    throw refuse('This is not a P12 file. Choose a file that ends in .p12 or .pfx.');
  }
  if (roundsIn(tree) > maxRounds) {
    throw refuse(`This P12 file asks for more than ${maxRounds} rounds of encryption. Export it with fewer.`);
  }
  return tree;
}

/** The largest number anywhere in the file, as far as it is readable without the passphrase. */
function roundsIn(node: forge.asn1.Asn1): number {
  if (Array.isArray(node.value)) return Math.max(0, ...node.value.map(roundsIn));
  if (node.tagClass !== asn1.Class.UNIVERSAL) return 0;
  if (node.type === asn1.Type.INTEGER) {
    return node.value.length > 6
      ? Number.MAX_SAFE_INTEGER
      : Number.parseInt(forge.util.bytesToHex(node.value), 16);
  }
  // Salts are octet strings too, and shorter than anything that has rounds in it.
  if (node.type !== asn1.Type.OCTETSTRING || node.value.length < 64) return 0;
  try {
    return roundsIn(asn1.fromDer(node.value));
  } catch {
    return 0;
  }
}

/** @throws Refusal `invalid-input` for a key too weak or of a kind that readers of PDF can't check. */
function refuseUnfit(certificate: X509Certificate, key: KeyObject): void {
  const { modulusLength = 0, namedCurve } = key.asymmetricKeyDetails ?? {};
  const strong =
    (key.asymmetricKeyType === 'rsa' && modulusLength >= 2048) ||
    (key.asymmetricKeyType === 'ec' && ['prime256v1', 'secp384r1', 'secp521r1'].includes(namedCurve ?? ''));
  if (!strong) {
    throw refuse('The key must be RSA of 2048 bits or more, or of the curve P-256, P-384 or P-521.');
  }
  const usage = keyUsageOf(asn1.fromDer(forge.util.createBuffer(certificate.raw.toString('binary'))));
  // Bits 0 and 1: digitalSignature and nonRepudiation, which is also called contentCommitment.
  if (usage !== null && (usage & 0xc0) === 0) {
    throw refuse('This certificate may not be used for signatures: ask its issuer for one that may.');
  }
}

const keyUsageOid = asn1.oidToDer('2.5.29.15').getBytes();

/** The first byte of a certificate's key usage; null when it says nothing of it. */
function keyUsageOf(node: forge.asn1.Asn1): number | null {
  if (!Array.isArray(node.value)) return null;
  const [first] = node.value;
  if (first?.type === asn1.Type.OID && first.value === keyUsageOid) {
    const octets = node.value.at(-1)?.value;
    // A bit string in an octet string: its tag, its length, the bits unused at its end, the bits.
    return typeof octets === 'string' ? octets.charCodeAt(3) || 0 : null;
  }
  for (const child of node.value) {
    const found = keyUsageOf(child);
    if (found !== null) return found;
  }
  return null;
}
