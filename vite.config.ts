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

const libraries = /node_modules\/@?(acorn|arquero|stdlib|temporal-polyfill|uwdata|valibot|yaml)\//;
const folders = /\/src\/(analyze|diagnose|fleet|import|procedure|statistics|timeline|verify)\//;
const words = /\/src\/(vocabulary|changes|change-columns)\.ts$/;

/** What not every command needs, and what such parts rest on, are parts of their own, so that each is run only where it is used. */
function partOf(module: string): string | null {
  return (
    [libraries, folders, words].map((some) => some.exec(module)?.[1]).find((name) => name !== undefined) ??
    null
  );
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
        codeSplitting: {
          groups: [{ name: partOf, debugName: 'parts', includeDependenciesRecursively: false }],
        },
      },
    },
  },
});
