import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/{unit,checks,property}/**/*.test.{ts,tsx}'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 30_000,
  },
});
