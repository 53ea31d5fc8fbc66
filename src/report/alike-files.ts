import type { Finding, ImportedFile, Input, NonEmpty } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { wrap } from './verify-text.ts';
import { sayCount } from './words.ts';

/** From so many files on a person reads what they have in common, not each by itself. Chosen here. */
export const fewFiles = 20;
const mostWordings = 10;

/**
 * The files in their order, each by itself where they are few; else those that were understood alike together, at the place
 * of the first of them.
 */
export function alikeGroups(files: readonly ImportedFile[]): readonly NonEmpty<ImportedFile>[] {
  if (files.length <= fewFiles) return files.map((file) => [file] as const);
  const groups = new Map<string, [ImportedFile, ...ImportedFile[]]>();
  for (const file of files) {
    const kind = kindOf(file);
    const known = groups.get(kind);
    if (known === undefined) groups.set(kind, [file]);
    else known.push(file);
  }
  return [...groups.values()];
}

/** How a file was understood, without what is its own: names, figures, what it holds. */
function kindOf({ reasons, columns, parameters }: ImportedFile): string {
  const understood = [reasons, columns, parameters.map(({ name, meaning }) => [name, meaning]).sort()];
  return JSON.stringify(understood).replace(/\d+/g, '#');
}

/** What there is to say of the further files of a group. */
export function moreText(rest: readonly ImportedFile[]): readonly string[] {
  const inputs = rest.map(({ input }) => input);
  const [first, last] = [inputs[0]?.file ?? '', inputs.at(-1)?.file ?? ''];
  const sum = (of: (rows: Input['rows']) => number): number =>
    inputs.reduce((all, { rows }) => all + of(rows), 0);
  const read = sayCount(
    sum((r) => r.read),
    'row',
  );
  const counts = `${read}: ${sum((r) => r.used)} used, ${sum((r) => r.unchanged)} unchanged, ${sum((r) => r.ignored)} ignored, ${sum((r) => r.unmatched)} not recognised, ${sum((r) => r.rejected)} rejected.`;
  return [
    ...wrap(
      `and ${sayCount(rest.length, 'more file')} read in the same way, ${terminal(first)} to ${terminal(last)} (one by one with --json). ${counts}`,
      '  ',
      '    ',
    ),
    ...wordingLines(inputs),
    ...rejectedLine(inputs),
  ];
}

interface Wording {
  count: number;
  files: number;
  readonly first: string;
}

/** The wordings that were not understood, of all files together, the most frequent first. */
function wordingLines(inputs: readonly Input[]): readonly string[] {
  const found = new Map<string, Wording>();
  for (const { file, unmatched } of inputs)
    for (const { wording, count, firstLine } of unmatched) {
      const known = found.get(wording);
      if (known === undefined) found.set(wording, { count, files: 1, first: `${file}:${firstLine}` });
      else {
        known.count += count;
        known.files += 1;
      }
    }
  const all = [...found].sort(([, a], [, b]) => b.count - a.count);
  const more = all.length - mostWordings;
  return [
    ...all
      .slice(0, mostWordings)
      .flatMap(([wording, { count, files, first }]) =>
        wrap(
          `"${terminal(wording)}", ${sayCount(count, 'time')} in ${sayCount(files, 'file')}, first in ${terminal(first)}`,
          '    not recognised: ',
          '      ',
        ),
      ),
    ...(more > 0 ? [`    and ${sayCount(more, 'more wording')}`] : []),
  ];
}

function rejectedLine(inputs: readonly Input[]): readonly string[] {
  const [first, ...rest] = inputs.filter(({ rows }) => rows.rejected > 0);
  if (first === undefined) return [];
  const others = rest.length === 0 ? '' : ` and ${sayCount(rest.length, 'other')}`;
  return wrap(`rejected rows: in ${terminal(first.file)}${others}`, '    ', '      ');
}

const mostAlike = 3;

/** What there is to say of files: of many alike, but for the file and its figures, the first three and how many more there are. */
export function remarksAlike(
  findings: readonly Finding[],
): readonly { readonly shown: readonly Finding[]; readonly more: number }[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const kind =
      finding.pair === null ? `${finding.id} ${finding.severity} ${saidOf(finding)}` : `${groups.size}`;
    const known = groups.get(kind);
    if (known === undefined) groups.set(kind, [finding]);
    else known.push(finding);
  }
  return [...groups.values()].map((alike) => ({
    shown: alike.slice(0, mostAlike),
    more: Math.max(0, alike.length - mostAlike),
  }));
}

function saidOf({ statement, evidence }: Finding): string {
  return statement.replaceAll(evidence[0].file, '').replace(/\d+/g, '#');
}
