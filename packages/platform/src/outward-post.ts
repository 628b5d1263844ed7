import { lookup as resolveName } from 'node:dns';
import { request as httpRequest } from 'node:http';
import { request as httpsRequest } from 'node:https';
import { isIP, type LookupFunction } from 'node:net';
import ipaddr from 'ipaddr.js';

/** Longer than any receiver should take, in milliseconds: for all of it, from the name's address to the last byte. */
const timeoutMs = 15_000;
/** Of an answer no more than this is read, in bytes; only its status matters. */
const mostBytes = 64 * 1024;

/** Nothing was sent: the address isn't one that may be posted to. */
export class AddressRefusedError extends Error {
  override name = 'AddressRefusedError';
}

export interface OutwardPost {
  url: string;
  headers: Record<string, string>;
  body: string;
  /** Whether addresses of this machine and of private networks, and http, are allowed. */
  allowPrivate: boolean;
  timeoutMs?: number;
}

/** Whether an address is a public one: none of loopback, private, link-local, multicast, mapped or reserved ranges. */
export function isPublicAddress(address: string): boolean {
  return ipaddr.isValid(address) && ipaddr.process(address).range() === 'unicast';
}

/**
 * Posts JSON to an address that others chose. The name is resolved once and the connection goes to the very address
 * that was looked at; redirects are not followed; what is answered is not kept.
 *
 * @returns the status. @throws AddressRefusedError; Error in words when there was no answer in time.
 */
export async function outwardPost(post: OutwardPost): Promise<{ status: number }> {
  const url = new URL(post.url);
  const { allowPrivate } = post;
  if (url.protocol !== 'https:' && !(allowPrivate && url.protocol === 'http:')) {
    throw new AddressRefusedError('Only https addresses are sent to.');
  }
  const literal = url.hostname.replace(/^\[|\]$/g, '');
  // A literal address is never looked up.
  if (isIP(literal) && !allowPrivate && !isPublicAddress(literal)) {
    throw new AddressRefusedError(`${literal} is not a public address.`);
  }
  const limit = post.timeoutMs ?? timeoutMs;
  const signal = AbortSignal.timeout(limit);
  return new Promise((done, fail) => {
    const request = (url.protocol === 'https:' ? httpsRequest : httpRequest)(
      url,
      {
        method: 'POST',
        agent: false,
        signal,
        lookup: lookupPublic(allowPrivate),
        headers: {
          ...post.headers,
          'content-type': 'application/json',
          'content-length': Buffer.byteLength(post.body),
          'user-agent': 'Garboard-Webhooks/1',
        },
      },
      (response) => {
        const status = response.statusCode ?? 0;
        let read = 0;
        response.on('data', (chunk: Buffer) => {
          read += chunk.length;
          if (read > mostBytes) finish();
        });
        const finish = () => {
          response.destroy();
          done({ status });
        };
        response.on('end', finish);
        response.on('error', fail);
      },
    );
    request.on('error', (error) =>
      fail(signal.aborted ? new Error(`No whole answer within ${limit / 1_000} s.`) : error),
    );
    request.end(post.body);
  });
}

const lookupPublic =
  (allowPrivate: boolean): LookupFunction =>
  (hostname, options, callback) => {
    resolveName(hostname, { ...options, all: true }, (error, addresses) => {
      if (error) return callback(error, '');
      // One private address among several is a trap as well: none of them is used.
      const bad = allowPrivate ? undefined : addresses.find(({ address }) => !isPublicAddress(address));
      const first = addresses[0];
      if (bad || !first) {
        const problem = `${hostname} stands for ${bad?.address ?? 'no address'}, which is not a public address.`;
        return callback(new AddressRefusedError(problem), '');
      }
      return options.all ? callback(null, addresses) : callback(null, first.address, first.family);
    });
  };
