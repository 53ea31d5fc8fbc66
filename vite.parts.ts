import type { Plugin } from 'vite';

/**
 * Puts the parts of a bundle, of which the first is run, into one file. Each is kept as text until it is asked for: text costs next to nothing
 * to read, code has to be understood, and no run needs all of it.
 */
export function partsInOneFile(): Plugin {
  return {
    name: 'parts-in-one-file',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
        const first = chunks.find((chunk) => chunk.isEntry);
        if (first === undefined) throw new Error('The bundle has no entry.');
        const texts = chunks.map(({ fileName, code }) => `${JSON.stringify(fileName)}: ${textOf(code)}`);
        for (const chunk of chunks) if (chunk !== first) delete bundle[chunk.fileName];
        const names = chunks.map(
          ({ fileName, exports }) => `${JSON.stringify(fileName)}: ${JSON.stringify(exports.join(' '))}`,
        );
        first.code = `#!/usr/bin/env node\n${loader}const given = {\n${names.join(',\n')}\n};\nconst parts = {\n${texts.join(',\n')}\n};\nload(${JSON.stringify(first.fileName)});\n`;
      },
    },
  };
}

/**
 * Gives a part as `require` gives a file of Node: what it gives is there by name, and the part is run once one of the names is used.
 */
const loader = `import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { compileFunction } from 'node:vm';
const here = fileURLToPath(import.meta.url);
const system = createRequire(import.meta.url);
const loaded = new Map();
const promised = new Map();
function part(name) {
  const file = name.replace(/^\\.\\//, '');
  if (!Object.hasOwn(parts, file)) return system(name);
  const known = loaded.get(file) ?? promised.get(file);
  if (known !== undefined) return known;
  const promise = {};
  promised.set(file, promise);
  for (const key of given[file].split(' '))
    Object.defineProperty(promise, key, { enumerable: true, configurable: true, get: () => load(file)[key] });
  return promise;
}
function load(file) {
  const known = loaded.get(file);
  if (known !== undefined) return known;
  const exports = {};
  loaded.set(file, exports);
  const run = compileFunction(parts[file], ['exports', 'require', '__filename'], { filename: file });
  run(exports, part, here);
  const promise = promised.get(file);
  if (promise !== undefined) Object.defineProperties(promise, Object.getOwnPropertyDescriptors(exports));
  return exports;
}
`;

/** Code as a literal of ASCII alone: a single other character would make all of it twice as long in memory, and slower to read. */
function textOf(code: string): string {
  const ascii = code.replace(
    /[^\0-\x7f]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return JSON.stringify(ascii);
}
