import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    coverage: {
      provider: 'v8',
      include: ['src/trade/**/*.ts', 'src/reckon/**/*.ts', 'src/rules/**/*.ts'],
      reporter: ['text', 'json-summary'],
      thresholds: { branches: 100 },
    },
  },
});
