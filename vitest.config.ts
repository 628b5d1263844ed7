import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    globalSetup: ['tests/support/global-setup.ts'],
    pool: 'forks',
    maxWorkers: 2,
    // As `npm start` runs the api and the worker.
    execArgv: ['--max-semi-space-size=64'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    reporters: ['default', ['json', { outputFile: 'tests/artefacts/results.json' }]],
  },
});
