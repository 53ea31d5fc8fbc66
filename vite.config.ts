import { readFileSync } from 'node:fs';
import { defineConfig } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

/** The command: one file that needs nothing but Node. */
export default defineConfig({
  define: { STEADYPAIR_VERSION: JSON.stringify(version) },
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/main.ts',
    target: 'node20',
    outDir: 'dist',
    emptyOutDir: false,
    minify: true,
    rollupOptions: {
      output: {
        entryFileNames: 'steadypair.mjs',
        codeSplitting: false,
        banner: '#!/usr/bin/env node',
      },
    },
  },
});
