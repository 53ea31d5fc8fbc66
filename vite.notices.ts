import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** The licences of the packages that are in a product, gathered from the modules of its bundles. */
export interface Notices {
  /** Gathers; give it to the build and to that of its workers. */
  gather(): Plugin;
  /** Name, version and licence of each package; a text that several have stands once, and so does a long part of it. */
  text(product: string): string;
}

export function notices(): Notices {
  const folders = new Set<string>();
  return {
    gather: () => ({
      name: 'gather-notices',
      generateBundle(_, bundle) {
        for (const file of Object.values(bundle))
          if (file.type === 'chunk') for (const id of file.moduleIds) addFolder(folders, id);
      },
    }),
    text(product) {
      const found = [...folders].map(noticeOf).sort((a, b) => (a.name < b.name ? -1 : 1));
      const texts = [...new Set(found.map((f) => f.text))];
      const namesOf = (text: string): readonly string[] =>
        found.filter((f) => f.text === text).map((f) => f.name);
      const blocks = texts.map((text, index) => {
        const before = texts.slice(0, index).find((other) => partAlike(other, text) >= leastAlike);
        const own = before === undefined ? text : shortened(text, before, namesOf(before)[0] ?? '');
        return `${namesOf(text).join('\n')}\n\n${own}`;
      });
      const head = `${product} holds the work of others, each under its own licence: ${found.length} packages.`;
      return `${[head, ...blocks].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
    },
  };
}

/** A shorter beginning that two texts share is written out in both. */
const leastAlike = 2000;

/** The text of a licence without the long beginning that it shares with an earlier one. */
function shortened(text: string, before: string, name: string): string {
  const alike = partAlike(before, text);
  const last = text.slice(0, alike).trimEnd().split('\n').at(-1)?.trim() ?? '';
  return `The licence of ${name}, word for word, as far as "${last}", and then:\n\n${text.slice(alike)}`;
}

/** How many characters the paragraphs have that two texts begin with alike. */
function partAlike(one: string, other: string): number {
  const [a, b] = [one.split('\n\n'), other.split('\n\n')];
  const end = a.findIndex((paragraph, index) => paragraph !== b[index]);
  const alike = a.slice(0, end < 0 ? a.length : end);
  return alike.reduce((sum, paragraph) => sum + paragraph.length + 2, 0);
}

function addFolder(folders: Set<string>, id: string): void {
  const [, folder] = /^\0?(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(id) ?? [];
  if (folder !== undefined) folders.add(folder);
}

function noticeOf(folder: string): { readonly name: string; readonly text: string } {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const files = readdirSync(folder)
    .filter((file) => /^(?:licen[cs]e|copying|notice)(?:$|[.-])/i.test(file))
    .sort();
  const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').trim());
  const own = texts.length === 0 ? ['The package comes without the text of its licence.'] : texts;
  return { name: `${name} ${version}, ${license ?? 'licence not stated'}`, text: own.join('\n\n') };
}
