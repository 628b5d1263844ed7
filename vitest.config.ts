import { defineConfig } from 'vitest/config';

/** Minutes of work that seldom find what the others don't; `npm run drills` runs them, and all states of all pages. */
const drills = ['tests/scale/scale.test.ts', 'tests/browser/desk-survey.test.ts'];

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['**/node_modules/**', ...(process.env.DRILLS === '1' ? [] : drills)],
    globalSetup: ['tests/support/global-setup.ts'],
    pool: 'forks',
    // One more than processors: who drives a browser waits half of the time.
    maxWorkers: 3,
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
