import type { NonEmpty, Notice, RowCounts, Setting, SourceLine } from '../../vocabulary.ts';
import type { ZeroBytes } from '../bytes/zero-bytes.ts';

/** A row that could not be read, and why. */
export interface Rejected {
  readonly line: number;
  readonly text: string;
  readonly isCut: boolean;
  readonly what: string;
  readonly fix: string;
  readonly setting?: Setting;
}

/** What must be said of the rows that could not be read or understood; the first lines are the evidence. */
export function rowNotices(
  file: string,
  counts: RowCounts,
  rejected: readonly Rejected[],
  unmatched: readonly { readonly line: number; readonly text: string }[],
  wordings: number,
): readonly Notice[] {
  const [worst, ...others] = rejected;
  const [odd, ...odds] = unmatched;
  const at = ({ line, text }: { readonly line: number; readonly text: string }): SourceLine => ({
    file,
    line,
    text,
  });
  const frame = { from: null, to: null };
  const notices: Notice[] = [];
  if (worst !== undefined) {
    const lines: NonEmpty<SourceLine> = [at(worst), ...others.map(at)];
    const what = `${plural(counts.rejected, 'row')} ${counts.rejected === 1 ? 'was' : 'were'} rejected; the first is line ${worst.line}: ${worst.what}`;
    const { fix, setting } = worst;
    const said = setting === undefined ? { what, fix } : { what, fix, setting };
    notices.push({ ...frame, id: 'rejected-rows', ...said, count: counts.rejected, lines });
  }
  if (odd !== undefined) {
    const lines: NonEmpty<SourceLine> = [at(odd), ...odds.map(at)];
    const what = `${plural(counts.unmatched, 'row')} in ${plural(wordings, 'wording')} ${counts.unmatched === 1 ? 'was' : 'were'} not recognised; the first is line ${odd.line}.`;
    const fix = 'Add the wording to the phrasebook.';
    notices.push({
      ...frame,
      id: 'unmatched-wording',
      what,
      fix,
      setting: 'wording',
      count: counts.unmatched,
      lines,
    });
  }
  return notices;
}

/** A row of totals is short. Chosen here. */
const longestTotal = 200;

/** A last row without a time is a total, known to mean nothing. */
export function isTotal({ what, text }: Rejected): boolean {
  if (text.length >= longestTotal) return false;
  return what.endsWith('is not a date.') || what.endsWith('too few columns.');
}

export function damagedTail(file: string, { line, text }: Rejected): Notice {
  const what = `The file ends in the middle of line ${line}: that row is lost.`;
  const fix = 'Export it again if the end matters.';
  return { id: 'damaged-tail', what, fix, count: 1, from: null, to: null, lines: [{ file, line, text }] };
}

/** Lines that stand behind zeros, each of so many bytes. */
export function zeroNotices(
  file: string,
  { lines, characters, first }: ZeroBytes,
  bytesEach: number,
): readonly Notice[] {
  const [one, ...others] = first.map((line) => ({ file, ...line }));
  if (one === undefined) return [];
  const bytes = characters * bytesEach;
  const stand = bytes === 1 ? 'One zero byte' : `${bytes} zero bytes`;
  const where = lines === 1 ? `line ${one.line}` : `${lines} lines, the first of them line ${one.line}`;
  const used = lines === 1 ? 'the line was used' : 'the lines were used';
  const what = `${stand} before ${where}, as after a loss of power: ${used}, but what should have been written there is lost.`;
  const fix = 'Check another source for what happened just before.';
  return [{ id: 'rejected-rows', what, fix, count: lines, from: null, to: null, lines: [one, ...others] }];
}

/** An archive that ends too early: `damage` says how, `last` is the last line that was read. */
export function damagedArchive(
  file: string,
  damage: string,
  last: { readonly line: number; readonly text: string },
): Notice {
  const what = `${damage}: unpacked up to line ${last.line}.`;
  const fix = 'Copy or export it again if the rest matters.';
  return { id: 'damaged-tail', what, fix, count: 1, from: null, to: null, lines: [{ file, ...last }] };
}

/** A file that names more units than any site has. */
export function tooManyUnits(
  file: string,
  most: number,
  first: { readonly line: number; readonly text: string },
): Notice {
  const what = `The file names more than ${most} units; rows of any further units were not recognised.`;
  const fix = 'Correct the column of the unit, or split the file.';
  return { id: 'unmatched-wording', what, fix, count: 1, from: null, to: null, lines: [{ file, ...first }] };
}

function plural(count: number, word: string): string {
  return count === 1 ? `one ${word}` : `${count} ${word}s`;
}
