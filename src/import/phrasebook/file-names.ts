import { compilePattern, fitsGlob } from './patterns.ts';

/** The path of a file as given, with forward slashes on every system. */
export function pathOf(name: string): string {
  return name.replaceAll('\\', '/');
}

/**
 * True if a file fits the `match` of a rule, in upper or lower case: by its base name, or by its path where `match` has a slash.
 * From which folder on a path was given is chance: its end counts, from any folder on. There `*` and `?` stand for text
 * within one name, `**` for any folders, and a slash at the start for the start of the path.
 */
export function fitsFile(match: string, name: string): boolean {
  const path = pathOf(name).replace(/^(?:\.\/)+/, '');
  const wanted = pathOf(match).replace(/^(?:\.\/)+/, '');
  if (!wanted.includes('/')) return fitsGlob(wanted, path.slice(path.lastIndexOf('/') + 1));
  const pattern = compilePattern(`^(?:${wanted.startsWith('/') ? '' : '.*/'}|)${spelt(wanted)}$`, true);
  return typeof pattern !== 'string' && pattern.match(path) !== null;
}

const tokens = /\/?\*\*\/|\*+|\?|[^*?]/gu;

/** A pattern of a path as a regular expression. */
function spelt(glob: string): string {
  return [...glob.matchAll(tokens)]
    .map(([token]) => {
      if (token === '/**/') return '/(?:.*/)?';
      if (token === '**/') return '(?:.*/)?';
      if (token === '**') return '.*';
      if (token.startsWith('*')) return '[^/]*';
      return token === '?' ? '[^/]' : token.replace(/[.+^${}()|[\]\\]/g, '\\$&');
    })
    .join('');
}
