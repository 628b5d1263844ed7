// Measures what the service does beside the least that could do the same (its floor), in one run.
// Usage: npm run bench [-- name… --sizes 1000,10000 --rounds 3 --seconds 3]
import { parseArgs } from 'node:util';
import { keepResults, openBench, type Part, type Result, tableOf } from './harness.ts';

/** Every part, loaded when it is asked for: `run` of its module. */
const parts: Record<string, () => Promise<{ run: Part }>> = {
  reads: () => import('./reads.ts'),
  writes: () => import('./writes.ts'),
  uploads: () => import('./uploads.ts'),
  derivatives: () => import('./derivatives.ts'),
  reports: () => import('./reports.ts'),
  queue: () => import('./queue.ts'),
  portal: () => import('./portal.ts'),
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sizes: { type: 'string', default: '1000,10000,50000' },
    rounds: { type: 'string', default: '3' },
    seconds: { type: 'string', default: '2' },
  },
});
const unknown = positionals.filter((name) => !(name in parts));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}. There are: ${Object.keys(parts).join(', ')}.`);
  process.exit(2);
}
const options = {
  sizes: values.sizes.split(',').map(Number),
  rounds: Number(values.rounds),
  seconds: Number(values.seconds),
};
const found = { results: [] as Result[], notes: {} as Record<string, string | number> };
for (const name of positionals.length > 0 ? positionals : Object.keys(parts)) {
  const part = await parts[name]?.();
  const begun = performance.now();
  await part?.run(openBench(name, options, found));
  found.notes[`${name}Seconds`] = Math.round((performance.now() - begun) / 1000);
  // After each part, so that one that fails loses nothing of those before.
  await keepResults(found);
}
console.log(tableOf(found.results));
