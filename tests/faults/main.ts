// Runs the whole service under load, does it harm, and looks whether anything acknowledged was lost or done twice:
//   npm run faults -- [--kills 300] [--seed 7] [--only kills,database,…] [--profile laptop|servers|both]
// Exit status 1 when anything was found.
import { parseArgs } from 'node:util';
import { killsOf } from './faults/kills.ts';
import { begin, endure, rest } from './run.ts';

const { values } = parseArgs({
  options: { kills: { type: 'string' }, seed: { type: 'string' } },
});
const seed = Number(values.seed ?? 1);
const run = await begin('laptop', { seed });
try {
  for (const fault of killsOf(run, Number(values.kills ?? 5))) await endure(run, fault);
  await rest(run, 0);
} finally {
  console.log(run.ledger.counts(), run.ledger.behaviour, run.readyAgain, run.ledger.violations);
  await run.stop();
}
