import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { onPath } from '../support/programs.ts';
import { startRedis } from '../support/redis.ts';
import { runScale } from './run.ts';

/** `npm run scale-test` is the long form. */
describe.runIf(onPath('redis-server'))('on Redis and an S3 server', () => {
  test('two api and three worker processes, three of them killed: each report once, each file accounted for', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'garboard-scale-'));
    const redis = await startRedis();
    const said: string[] = [];
    try {
      const outcome = await runScale({
        ...{ reports: 4, uploads: 24, clients: 6, kills: 3, betweenKillsMs: 1_500 },
        seed: Number(process.env.SCALE_SEED ?? Date.now() % 1_000_000),
        ...{ redisUrl: redis.url, folder, say: (line: string) => said.push(line) },
      });
      expect(outcome.wrong, said.join('\n')).toEqual([]);
      expect(outcome).toMatchObject({ reports: 4, photos: 24, invitations: 4 });
      expect(outcome.kills.length).toBeGreaterThan(0);
      // 24 originals, 4 PDFs, and the sizes, which are the same for all.
      expect(outcome.objects).toBeGreaterThanOrEqual(24 + 4 + 2);
    } finally {
      await redis.stop();
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    }
  }, 600_000);
});
