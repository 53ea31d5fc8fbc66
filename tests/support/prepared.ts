import { type Analysed, type PrepareQuestion, prepareSwap } from '../../src/pipeline.ts';
import type { Job, SourceLine, WorkSheet } from '../../src/vocabulary.ts';
import { at } from './clean-swap.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** RO1 on the morning of a swap: half A active, half B its ready standby; 24 h 20 min up to 09:00. */
export const morning: readonly string[] = [
  '08:40:00 RO1 A role active',
  '08:40:00 RO1 B role standby',
  '08:40:00 RO1   partner ready',
  '08:40:00 RO1   configuration current',
  '08:40:00 RO1 A firmware 6.4.1',
  '08:40:00 RO1 B firmware 6.4.1',
  '08:40:00 RO1 A model Tern-2',
  '08:40:00 RO1 B model Tern-2',
  '08:40:00 RO1 A serial T2-1',
  '08:40:00 RO1 B serial T2-2',
  '08:40:00 RO1 A light off',
  '08:40:00 RO1 B light steady',
];

/** A journal of 13 and 14 March 2026: what stands at 08:40 of the 13th, then lines of the 14th; the last at 09:00. */
export function twoDays(
  first: readonly string[],
  second: readonly string[] = ['09:00:00 RO1 configuration current'],
): string {
  const day = journalText(first.join('\n')).replaceAll('2026-03-14T', '2026-03-13T');
  return `${day}${journalText(second.join('\n'))}`;
}

/** Lines without those that hold one of some words. */
export function without(lines: readonly string[], ...words: readonly string[]): readonly string[] {
  const unknown = words.filter((word) => !lines.some((line) => line.includes(word)));
  if (unknown.length > 0) throw new Error(`No line has ${unknown.join(', ')}.`);
  return lines.filter((line) => !words.some((word) => line.includes(word)));
}

/** What a sheet is asked for with; by default half an hour after the last line. */
export interface Asked extends Partial<PrepareQuestion> {
  readonly pair?: string;
  readonly job?: Job;
}

/** The sheet of a pair from what was analysed. */
export function sheetFrom(analysed: Analysed, { pair, job, now, allowOld }: Asked = {}): WorkSheet {
  const question = { now: now ?? at('09:30:00'), allowOld: allowOld ?? false };
  return prepareSwap(analysed, pair ?? null, job ?? null, question);
}

/** The sheet of RO1 from a journal of the two days, or from files. */
export async function sheetOfFiles(
  told: string | Readonly<Record<string, string>>,
  asked: Asked = {},
): Promise<WorkSheet> {
  return sheetFrom(await analyseTexts(typeof told === 'string' ? { 'ro1.log': told } : told), asked);
}

/** Line numbers of evidence, in the order given. */
export function numbers(evidence: readonly SourceLine[]): readonly number[] {
  return evidence.map(({ line }) => line);
}
