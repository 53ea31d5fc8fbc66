import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';
import { notices } from './vite.notices.ts';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

const gathered = notices();

/** Ships the licences of what is bundled beside the command. */
function noticeFile(): Plugin {
  return {
    name: 'notice-file',
    generateBundle: {
      order: 'post',
      handler() {
        this.emitFile({ type: 'asset', fileName: 'NOTICE.txt', source: gathered.text('steadypair.mjs') });
      },
    },
  };
}

/** The command: one file that needs nothing but Node. */
export default defineConfig({
  define: { STEADYPAIR_VERSION: JSON.stringify(version) },
  plugins: [gathered.gather(), noticeFile()],
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
