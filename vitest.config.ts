import { defineConfig } from 'vitest/config';

export default defineConfig({
  define: { STEADYPAIR_VERSION: JSON.stringify('test') },
  test: {
    include: ['tests/**/*.test.ts'],
    // Modules are loaded once per worker and shared by its test files: loading them took half of the time. So a test leaves
    // nothing behind in a module, as the code itself does not.
    pool: 'threads',
    isolate: false,
    // Half as many workers again as cores: the browser's tests wait more than they work.
    maxWorkers: '150%',
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
