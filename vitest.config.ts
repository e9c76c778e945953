import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: 'tests/journeys/build-once.ts',
    // A bound against hanging, not a measure: machines that run the tests differ in speed.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    environment: 'node',
    // One process a core: most of the time goes to programs and browsers that are started, and waited for.
    maxWorkers: '100%',
    // The modules are loaded once a worker: loading them anew for every file took three times as long as the tests.
    isolate: false,
    coverage: {
      provider: 'v8',
      include: ['src/trade/**/*.ts', 'src/reckon/**/*.ts', 'src/rules/**/*.ts'],
      reporter: ['text', 'json-summary'],
      thresholds: {
        statements: 100,
        functions: 100,
        lines: 100,
        'src/trade/**/*.ts': { branches: 100 },
        'src/reckon/**/*.ts': { branches: 100 },
        'src/rules/**/*.ts': { branches: 99.95 },
      },
    },
  },
});
