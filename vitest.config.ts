import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    globalSetup: ['tests/support/global-setup.ts'],
    pool: 'forks',
    // Browser tests wait more than they work, so one more than the processors of a small machine.
    maxWorkers: 3,
    // As `npm start` runs the api and the worker.
    execArgv: ['--max-semi-space-size=64'],
    testTimeout: 90_000,
    hookTimeout: 120_000,
    reporters: ['default', ['json', { outputFile: 'tests/artefacts/results.json' }]],
  },
});
