import { isIP } from 'node:net';

/** Whether this is one address, a network such as 10.0.0.0/8, or the name of ranges that are never public. */
export function isNetwork(given: string): boolean {
  const [address = '', bits] = given.trim().split('/');
  if (['loopback', 'linklocal', 'uniquelocal'].includes(given.trim())) return true;
  const longest = isIP(address) === 6 ? 128 : 32;
  return isIP(address) > 0 && (bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= longest));
}
