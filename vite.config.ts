import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { notices } from './vite.notices.ts';
import { partsInOneFile } from './vite.parts.ts';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

const gathered = notices();

const browserCanvas = fileURLToPath(
  new URL('node_modules/vega-canvas/build/vega-canvas.browser.js', import.meta.url),
);

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
  plugins: [gathered.gather(), partsInOneFile(), noticeFile()],
  ssr: { noExternal: true },
  // The other build of it looks for a package that the command does not bring, and waits for it.
  resolve: { alias: { 'vega-canvas': browserCanvas } },
  build: {
    ssr: 'src/cli/main.ts',
    target: 'node20',
    outDir: 'dist',
    emptyOutDir: false,
    minify: true,
    rollupOptions: {
      output: {
        format: 'cjs',
        entryFileNames: 'steadypair.mjs',
        chunkFileNames: '[name].js',
      },
    },
  },
});
