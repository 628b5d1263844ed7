import { createHmac, randomBytes } from 'node:crypto';
import type { Sealer } from '@garboard/platform/sealing';

const prefix = 'whsec_';
/** After a change, messages are signed by the old secret too for this long, in milliseconds. */
export const bothMs = 24 * 60 * 60_000;

export const newSecret = (): string => prefix + randomBytes(32).toString('base64');

const purpose = (endpointId: string) => `webhook ${endpointId}`;

export const sealSecret = (sealer: Sealer, endpointId: string, secret: string) =>
  new Uint8Array(sealer.seal(Buffer.from(secret), purpose(endpointId)));

/** @throws SealBroken when the server's secret isn't the one it was kept with. */
export const openSecret = (sealer: Sealer, endpointId: string, sealed: Uint8Array): string =>
  sealer.open(sealed, purpose(endpointId)).toString();

/** The three headers of the Standard Webhooks specification; a signature for each secret. */
export function signedHeaders(message: { id: string; at: Date; body: string; secrets: string[] }) {
  const seconds = String(Math.floor(message.at.getTime() / 1_000));
  const signatures = message.secrets.map((secret) => {
    const key = Buffer.from(secret.slice(prefix.length), 'base64');
    const text = `${message.id}.${seconds}.${message.body}`;
    return `v1,${createHmac('sha256', key).update(text).digest('base64')}`;
  });
  return {
    'webhook-id': message.id,
    'webhook-timestamp': seconds,
    'webhook-signature': signatures.join(' '),
  };
}
