import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { openSealer, SealBroken, sealerOf, secretFileName } from '@garboard/platform/sealing';
import { expect, test } from 'vitest';
import { testFolder } from './folders.ts';

const plain = Buffer.from('a key that nobody should read');

test('what is sealed opens again, for the same purpose and with the same secret only', () => {
  const sealer = sealerOf('a secret of more than 32 characters');
  const sealed = sealer.seal(plain, 'firm 1');
  expect(sealed.includes(plain)).toBe(false);
  expect(sealer.seal(plain, 'firm 1').equals(sealed)).toBe(false);
  expect(sealer.open(sealed, 'firm 1')).toEqual(plain);
  expect(() => sealer.open(sealed, 'firm 2')).toThrow(SealBroken);
  expect(() => sealerOf('another secret of over 32 characters').open(sealed, 'firm 1')).toThrow(SealBroken);
  for (const place of [0, 15, sealed.length - 1]) {
    const changed = Buffer.from(sealed);
    changed[place] = (changed[place] ?? 0) ^ 1;
    expect(() => sealer.open(changed, 'firm 1')).toThrow(SealBroken);
  }
});

test('without GARBOARD_SECRET one is made once, readable by its owner alone', async () => {
  const dataDir = join(await testFolder(), 'new');
  const sealers = await Promise.all([openSealer({ dataDir }), openSealer({ dataDir })]);
  const sealed = sealers[0]?.seal(plain, 'x') ?? plain;
  expect(sealers[1]?.open(sealed, 'x')).toEqual(plain);
  const path = join(dataDir, secretFileName);
  expect((await stat(path)).mode & 0o777).toBe(0o600);
  const secret = (await readFile(path, 'utf8')).trim();
  expect(secret.length).toBeGreaterThan(40);
  expect(sealerOf(secret).open(sealed, 'x')).toEqual(plain);
  expect((await openSealer({ dataDir, secret })).open(sealed, 'x')).toEqual(plain);
});
