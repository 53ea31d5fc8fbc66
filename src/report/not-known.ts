import { type Finding, failureKinds, type Input } from '../vocabulary.ts';
import { sayCount } from './words.ts';

/** What was given and is in no answer: rows, of so many that were read, and files. */
export interface NotKnown {
  readonly read: number;
  readonly unmatched: number;
  readonly rejected: number;
  /** Names of files that could not be used. */
  readonly leftOut: readonly string[];
}

const mostNames = 3;

/** What an answer that rests on these files cannot know. */
export function notKnownOf({
  inputs,
  findings,
}: {
  readonly inputs: readonly Pick<Input, 'file' | 'rows'>[];
  readonly findings: readonly Finding[];
}): NotKnown {
  const names = new Set(inputs.map(({ file }) => file));
  // What is said of a file that was read stands under the same ids.
  const failed = findings.filter(
    ({ id, pair, evidence: [{ file }] }) =>
      pair === null && failureKinds.some((kind) => kind === id) && !names.has(file),
  );
  return {
    ...rowsNotKnown(inputs),
    leftOut: [...new Set(failed.map(({ evidence: [{ file }] }) => file))],
  };
}

/** The rows of some files that are in no answer. */
export function rowsNotKnown(inputs: readonly Pick<Input, 'rows'>[]): Omit<NotKnown, 'leftOut'> {
  const sum = (of: (rows: Input['rows']) => number): number =>
    inputs.reduce((all, { rows }) => all + of(rows), 0);
  return {
    read: sum((r) => r.read),
    unmatched: sum((r) => r.unmatched),
    rejected: sum((r) => r.rejected),
  };
}

/** One sentence for each kind of what is not known, to stand above the verdict; empty where all was recognised. */
export function sayNotKnown({ leftOut, ...rows }: NotKnown): readonly string[] {
  return [...sayRowsNotKnown(rows), ...(leftOut.length === 0 ? [] : [sayLeftOut(leftOut)])];
}

/** The same of rows alone. */
export function sayRowsNotKnown({ read, unmatched, rejected }: Omit<NotKnown, 'leftOut'>): readonly string[] {
  const said = (count: number, what: string): readonly string[] =>
    count === 0
      ? []
      : [
          `${figure(count)} of ${figure(read)} rows ${count === 1 ? 'was' : 'were'} ${what} (${sayShare(count, read)}).`,
        ];
  return [...said(unmatched, 'not recognised'), ...said(rejected, 'rejected')];
}

/** What is said where nothing was found: none only where all was recognised. */
export function sayNoFinding(of: Parameters<typeof notKnownOf>[0]): string {
  return `No finding${inRowsRecognised(of)}.`;
}

/** ` in the rows recognised`, for what is said of what was not found; empty where all was recognised. */
export function inRowsRecognised(of: Parameters<typeof notKnownOf>[0]): string {
  return sayNotKnown(notKnownOf(of)).length === 0 ? '' : ' in the rows recognised';
}

/** `2 files were left out: a.csv, b.csv.` */
export function sayLeftOut(names: readonly string[]): string {
  const more = names.length - mostNames;
  const listed = `${names.slice(0, mostNames).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  return `${capital(sayCount(names.length, 'file'))} ${names.length === 1 ? 'was' : 'were'} left out: ${listed}.`;
}

/** A share in per cent, which is 0 or 100 only where it is exactly that. */
export function sayShare(part: number, whole: number): string {
  const percent = (100 * part) / whole;
  if (part > 0 && percent < 0.1) return 'less than 0.1 %';
  if (part < whole && percent > 99.9) return 'more than 99.9 %';
  const digits = percent < 10 || (percent > 99 && part < whole) ? 1 : 0;
  return `${percent.toFixed(digits).replace(/\.0$/, '')} %`;
}

function figure(count: number): string {
  return count.toLocaleString('en');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
