import { password as passwordSchema } from '@garboard/contract/account';
import { refuseCommonPassword } from '@garboard/core/people/password-strength';
import { hashPassword, secretFits } from '@garboard/core/people/passwords';
import { makeRecoveryCodes } from '@garboard/core/people/recovery-codes';
import { newToken } from '@garboard/core/people/tokens';
import { inTransaction } from '@garboard/db/database';
import { openLogger } from '@garboard/platform/logger';
import { buildPerson } from '@garboard/seed/builders';
import { dictionary } from '@zxcvbn-ts/language-common';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.close());

const own = ['Orla Fennimore', 'orla@tansyrook.example', 'Tansy Rook Surveys'];
const taken = (given: string) => {
  const parsed = passwordSchema.safeParse(given);
  if (!parsed.success) return false;
  try {
    refuseCommonPassword(parsed.data, own);
    return true;
  } catch {
    return false;
  }
};

describe('a password', { timeout: 120_000 }, () => {
  it('has 12 characters or more, 200 at most, and any of them: no rule asks for kinds', () => {
    expect(taken('k4!Zq0-mR2x')).toBe(false);
    for (const good of [
      'tidal rope under mist',
      'correcthorsestaplebattery',
      '83915027461853',
      'ÜBERMÄSSIGFEUCHT',
      '潮汐のロープと霧の下の港',
      '⛵️🌊🪢 unter der Laterne',
      '  blanks at both ends  ',
      `${'a drier harbour wall '.repeat(9)}.`,
    ]) {
      expect(taken(good), good).toBe(true);
    }
    expect(passwordSchema.safeParse('x'.repeat(64)).success).toBe(true);
    expect(passwordSchema.safeParse('x'.repeat(201)).success).toBe(false);
  });

  it('is none of the common ones: of the list that ships, every one long enough is refused', () => {
    const lists = dictionary as unknown as Record<string, (string | number)[]>;
    const common = Object.entries(lists)
      .filter(([name]) => name.startsWith('passwords'))
      .flatMap(([, words]) => words.map(String));
    expect(common.length).toBeGreaterThan(3000);
    const long = common.filter((word) => word.length >= 12);
    expect(long.length).toBeGreaterThan(100);
    console.info(`${common.length} common passwords ship, ${long.length} of them of 12 characters or more`);
    expect(long.slice(0, 1000).filter(taken)).toEqual([]);
    // And as people lengthen the short ones.
    const lengthened = common.slice(0, 60).flatMap((word) => [word.padEnd(12, '1'), `${word}${word}`]);
    const through = lengthened.filter((word) => word.length >= 12 && taken(word));
    expect(through.length / lengthened.length).toBeLessThan(0.02);
  });

  it('is not what can be read off the account, nor the name of this service', () => {
    for (const poor of [
      'orlafennimore',
      'Fennimore1234',
      'tansyrook2026',
      'orla@tansyrook.example',
      'garboard2026',
      'surveysurvey',
      'aaaaaaaaaaaaaaaa',
      'qwertyuiop123',
      'abcdefghijklm',
    ]) {
      expect(taken(poor), poor).toBe(false);
    }
  });

  it('is taken as it was typed: no blank trimmed, no letter folded, no end cut off', async () => {
    const kept = await hashPassword('  Tidal rope ÄÖ  ');
    expect(await secretFits(kept, '  Tidal rope ÄÖ  ')).toBe(true);
    for (const other of ['Tidal rope ÄÖ', '  tidal rope äö  ', '  Tidal rope ÄÖ', '  Tidal rope AO  ']) {
      expect(await secretFits(kept, other)).toBe(false);
    }
    const long = `${'x'.repeat(72)}first`;
    expect(await secretFits(await hashPassword(long), `${'x'.repeat(72)}other`)).toBe(false);
    expect(passwordSchema.parse('  Tidal rope ÄÖ  ')).toBe('  Tidal rope ÄÖ  ');
  });

  it('is kept by argon2id with 19 MiB, two passes and a salt of its own', async () => {
    const [one, two] = await Promise.all([hashPassword('tidal rope'), hashPassword('tidal rope')]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[\w+/]{22}\$[\w+/]{43}$/);
    expect(one).not.toBe(two);
  });
});

describe('secrets that we make', { timeout: 120_000 }, () => {
  it('are 256 random bits, never twice the same', () => {
    const many = new Set(Array.from({ length: 2000 }, newToken));
    expect(many.size).toBe(2000);
    const bits = [...many].map((token) => Buffer.from(token, 'base64url'));
    expect(bits.every((bytes) => bytes.length === 32)).toBe(true);
    // Half of all bits are set, to within six standard deviations.
    const set = bits
      .flatMap((bytes) => [...bytes])
      .reduce((sum, byte) => sum + byte.toString(2).replaceAll('0', '').length, 0);
    expect(Math.abs(set / (2000 * 256) - 0.5)).toBeLessThan(0.0042);
  });

  it('for recovery are ten of 50 random bits beside their mark, kept by argon2id', async () => {
    const person = await buildPerson(server.db);
    const codes = await inTransaction(server.db, [], (tx) =>
      makeRecoveryCodes(
        {
          ...{ tx, store: server.store, clock: () => new Date(), log: openLogger('test', 'fatal') },
          actor: { kind: 'system', firmIds: [] },
        },
        person.id,
      ),
    );
    const rows = await server.db.prisma.recoveryCode.findMany({ where: { personId: person.id } });
    expect(new Set(codes).size).toBe(10);
    expect(rows).toHaveLength(10);
    for (const { hash, mark } of rows) {
      expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
      expect(mark).toHaveLength(2);
    }
    const text = JSON.stringify(rows);
    for (const code of codes) expect(text).not.toContain(code.replaceAll('-', '').slice(2));
  });
});
