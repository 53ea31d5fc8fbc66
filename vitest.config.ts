import { defineConfig } from 'vitest/config';

export default defineConfig({
  define: { STEADYPAIR_VERSION: JSON.stringify('test') },
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
