import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { describeLayouts } from './src/import/layouts/describe-layouts.ts';
import { importers } from './src/import/layouts/importers.ts';
import { notices } from './vite.notices.ts';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));
const site = join('samples', 'marrow-bay');

/** The logs of the demo site, with one phrasebook and the job of each swap, as the page takes them. */
function demoSite(): string {
  const files = readdirSync(site)
    .sort()
    .flatMap((story) =>
      readdirSync(join(site, story))
        .sort()
        .map((name) => ({
          name: name === 'job.yaml' ? `${story}-job.yaml` : name,
          text: readFileSync(join(site, story, name), 'utf8'),
        })),
    );
  const once = [...new Map(files.map((file) => [file.name, file])).values()];
  return gzipSync(JSON.stringify(once), { level: 9 }).toString('base64');
}

/** Two years of the demo site's pairs: stored timelines, which are packed already. */
function demoFleet(): string {
  const folder = join('samples', 'marrow-bay-fleet');
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.parquet'))
    .sort();
  return JSON.stringify(names.map((name) => ({ name, base64: readFileSync(join(folder, name), 'base64') })));
}

const gathered = notices();

/** The worker is a third of the page: it is packed in it, and unpacked when the page is opened. */
function packedWorker(): Plugin {
  const written = /const jsContent = ("(?:[^"\\]|\\.)*");/;
  return {
    name: 'packed-worker',
    enforce: 'pre',
    transform: {
      filter: { id: /\/worker\.ts\?worker&inline$/ },
      handler(code) {
        const [, literal] = written.exec(code) ?? [];
        if (literal === undefined)
          throw new Error('Vite writes an inline worker in another way than before.');
        const packed = gzipSync(JSON.parse(literal), { level: 9 }).toString('base64');
        const unpacked = `await new Response(new Blob([Uint8Array.from(atob("${packed}"), (c) => c.charCodeAt(0))]).stream().pipeThrough(new DecompressionStream("gzip"))).text()`;
        return { code: code.replace(written, () => `const jsContent = ${unpacked};`), map: null };
      },
    },
  };
}

/** Writes the hashes of the page's own scripts into its policy: nothing else may run. The licences stand at the end of it. */
function scriptHashes(): Plugin {
  return {
    name: 'script-hashes',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type !== 'asset' || !file.fileName.endsWith('.html')) continue;
          const page = String(file.source);
          const scripts = [...page.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g)].map(
            ([, text = '']) => text,
          );
          const hashes = scripts.map(
            (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`,
          );
          file.fileName = 'steadypair.html';
          // Two dashes would end a comment.
          const licences = gathered.text('steadypair.html').replaceAll('--', '- -');
          file.source = `${page.replace('SCRIPT-HASHES', () => hashes.join(' '))}\n<!--\n${licences}-->\n`;
        }
      },
    },
  };
}

/** The page: one file that opens from disk. */
export default defineConfig({
  root: 'web',
  define: {
    STEADYPAIR_VERSION: JSON.stringify(version),
    STEADYPAIR_LAYOUTS: JSON.stringify(describeLayouts(importers)),
    STEADYPAIR_DEMO: JSON.stringify(demoSite()),
    STEADYPAIR_DEMO_FLEET: JSON.stringify(demoFleet()),
  },
  plugins: [
    gathered.gather(),
    packedWorker(),
    viteSingleFile({ removeViteModuleLoader: true }),
    scriptHashes(),
  ],
  worker: { format: 'iife', plugins: () => [gathered.gather()] },
  build: {
    target: 'es2023',
    outDir: '../dist',
    emptyOutDir: false,
    minify: true,
    modulePreload: false,
  },
});
