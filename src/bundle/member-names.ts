import { readPhrasebook } from '../pipeline.ts';
import { bundleParts, type NamedYaml, namedAlike } from './inside.ts';

/** What begins the path to what is a person's own on a computer: such folders say who that is. */
const ownFolders = /^(?:.*\/)?(?:home|users|documents and settings)\/[^/]+\/|^(?:.*\/)?root\//i;
/** What a name may not hold on every disk. */
const unsafe = /[\p{Cc}<>:"|?*\\]/gu;

/**
 * Where each file stands in a bundle, in their order: its own name, and of its folders only as many as the rules of the
 * phrasebook for files need, and as tell two files of one name apart. None leads out of the bundle or to a person's folder, and
 * no two differ in case alone.
 */
export function memberNames(names: readonly string[], phrasebook: NamedYaml | null): readonly string[] {
  const rules = readPhrasebook(phrasebook?.file ?? 'built-in phrasebook', phrasebook?.text ?? null);
  const all = names.map((name) => {
    const parts = partsOf(name);
    // An archive that a person gives the bundle as may have any name.
    const fits = (count: number): boolean =>
      namedAlike(rules, name, `bundle.zip/${bundleParts.logs}${pathOf(parts, count)}`);
    const counts = parts.map((_, index) => index + 1);
    return { parts, count: counts.find(fits) ?? parts.length };
  });
  const counts = toldApart(all);
  const taken = new Set<string>();
  return all.map(({ parts }, index) => {
    const path = free(pathOf(parts, counts[index] ?? parts.length), taken);
    taken.add(path.toLowerCase());
    return `${bundleParts.logs}${path}`;
  });
}

interface Named {
  readonly parts: readonly string[];
  /** How many of its parts the rules need. */
  readonly count: number;
}

/** The path of a file without what leads out of a folder, or to a person's own. */
export function safePath(name: string): string {
  return partsOf(name).join('/');
}

/** The folders and the name of a file, made safe. */
function partsOf(name: string): readonly string[] {
  const path = name.replaceAll('\\', '/').replace(ownFolders, '');
  const parts = path
    .split('/')
    .filter((part) => !/^(?:\.{0,2}|[A-Za-z]:)$/.test(part))
    .map((part) => part.replace(unsafe, '_').replace(/[. ]+$/, '_'));
  return parts.length === 0 ? ['log'] : parts;
}

function pathOf(parts: readonly string[], count: number): string {
  return parts.slice(-count).join('/');
}

/** Of files that would have one name each gets a folder more, as long as it has one. */
function toldApart(all: readonly Named[]): readonly number[] {
  const counts = all.map(({ count }) => count);
  for (;;) {
    const paths = all.map(({ parts }, index) => pathOf(parts, counts[index] ?? 1).toLowerCase());
    const seen = new Map<string, number>();
    for (const path of paths) seen.set(path, (seen.get(path) ?? 0) + 1);
    let isChanged = false;
    for (const [index, { parts }] of all.entries()) {
      const count = counts[index] ?? 1;
      if ((seen.get(paths[index] ?? '') ?? 0) < 2 || count >= parts.length) continue;
      counts[index] = count + 1;
      isChanged = true;
    }
    if (!isChanged) return counts;
  }
}

/** The path, numbered before its ending where another has it already. */
function free(path: string, taken: ReadonlySet<string>): string {
  for (let count = 1; ; count += 1) {
    const numbered = count === 1 ? path : path.replace(/(?=(?:\.[A-Za-z0-9]{1,8}){0,2}$)/, ` (${count})`);
    if (!taken.has(numbered.toLowerCase())) return numbered;
  }
}
