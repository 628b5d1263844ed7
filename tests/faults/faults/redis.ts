import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Fault, Run } from '../run.ts';

const impossible = ({ installation }: Run) =>
  installation.redis ? null : 'the queue of this installation is kept in PostgreSQL';

/** FLUSHALL while jobs wait, run and are planned. */
export const redisEmptied: Fault = {
  name: 'Redis emptied',
  impossible,
  async inflict(run) {
    await sleep(run.random() * 2_000);
    await run.checks.untilJobsUnderWay();
    const port = String(run.installation.redis?.port() ?? 0);
    const [code] = await once(spawn('redis-cli', ['-p', port, 'FLUSHALL'], { stdio: 'ignore' }), 'exit');
    if (code !== 0) throw new Error(`redis-cli ended with ${code}.`);
  },
};

/** Redis is killed and started again with what its log kept. */
export const redisRestarted: Fault = {
  name: 'Redis killed and started again',
  impossible,
  async inflict(run) {
    await sleep(run.random() * 2_000);
    await run.installation.redis?.restart();
  },
};
