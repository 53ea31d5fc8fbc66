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
        first.code = `#!/usr/bin/env node\n${loader}const parts = {\n${texts.join(',\n')}\n};\npart(${JSON.stringify(first.fileName)});\n`;
      },
    },
  };
}

/** Loads a part once, as Node loads a file of the kind that `require` takes. */
const loader = `import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { compileFunction } from 'node:vm';
const here = fileURLToPath(import.meta.url);
const system = createRequire(import.meta.url);
const loaded = new Map();
function part(name) {
  const file = name.replace(/^\\.\\//, '');
  if (!Object.hasOwn(parts, file)) return system(name);
  const known = loaded.get(file);
  if (known !== undefined) return known.exports;
  const module = { exports: {} };
  loaded.set(file, module);
  const run = compileFunction(parts[file], ['exports', 'require', '__filename'], { filename: file });
  run(module.exports, part, here);
  return module.exports;
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
