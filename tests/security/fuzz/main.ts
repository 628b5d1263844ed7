// Requests made up from the contract's schemas, at every route. Usage: npm run fuzz -- [--requests 50000] [--seed 1] [--only getMe,…]
import { parseArgs } from 'node:util';
import type { RouteName } from '@garboard/contract/routes';
import { startVitest } from 'vitest/node';

const { values } = parseArgs({
  options: {
    requests: { type: 'string', default: '50000' },
    seed: { type: 'string', default: String(Math.floor(Math.random() * 2 ** 31)) },
    only: { type: 'string', default: '' },
  },
});
const only = values.only === '' ? [] : (values.only.split(',') as RouteName[]);
const fuzz = { requests: Number(values.requests), seed: Number(values.seed), only };
if (!(fuzz.requests > 0) || !Number.isSafeInteger(fuzz.seed)) {
  throw new Error('Give --requests and --seed as whole numbers, such as --requests 50000 --seed 7.');
}

const vitest = await startVitest('test', [], {
  watch: false,
  include: ['tests/security/fuzz/long-fuzz.ts'],
  testTimeout: 0,
  reporters: ['default'],
  provide: { fuzz },
});
await vitest.close();
