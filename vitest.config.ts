import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Minutes of work that seldom find what the others don't; `npm run drills` runs them, and all states of all pages. */
const drills = ['tests/scale/scale.test.ts', 'tests/browser/desk-survey.test.ts'];

/** What takes longest, for half of it waiting. */
const longest = [
  ...['browser/axe', 'isolation/matrix', 'browser/capture', 'faults/faults', 'browser/photo-desk'],
  ...['browser/notices', 'jobs/worker-death', 'browser/main-job', 'scale/several-processes'],
].map((name) => `tests/${name}.test.ts`);

/** Begins with what takes longest: on a fresh machine nothing is known of that, and the last file would run alone. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const at = longest.findIndex((name) => moduleId.endsWith(name));
      return at < 0 ? longest.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['**/node_modules/**', ...(process.env.DRILLS === '1' ? [] : drills)],
    globalSetup: ['tests/support/global-setup.ts'],
    pool: 'forks',
    // One more than processors: who drives a browser, or kills a process, waits half of the time.
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    // Loading the whole application anew for each of 120 files took a third of the time. A file cleans up after itself:
    // what it starts it stops, and what it sets in the environment it takes back.
    isolate: false,
    // As `npm start` runs the api and the worker.
    execArgv: ['--max-semi-space-size=64'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    reporters: ['default', ['json', { outputFile: 'tests/artefacts/results.json' }]],
  },
});
