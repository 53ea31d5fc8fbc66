import { type Analysed, verify } from '../../src/pipeline.ts';
import type { SourceLine, Swap } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** A swap of half B of RO1 as it should be, with a switchover, each fact once: every check holds on it. */
export const cleanJournal: readonly string[] = [
  '08:40:00  RO1 A  role active',
  '08:40:00  RO1 B  role standby',
  '08:40:00  RO1    partner ready',
  '08:40:00  RO1    configuration current',
  '08:40:00  RO1 A  firmware 6.4.1',
  '08:40:00  RO1 B  firmware 6.4.1',
  '08:40:00  RO1 A  model Tern-4',
  '08:40:00  RO1 B  model Tern-2',
  '08:40:00  RO1 B  serial T2-1',
  '08:40:00  RO1 A  link a up',
  '08:40:00  RO1 A  link b up',
  '08:40:00  RO1 B  link a up',
  '08:40:00  RO1 B  link b up',
  '08:40:00  RO1 A  supply good',
  '08:40:00  RO1 B  supply good',
  '09:00:00  RO1 B  module removed',
  '09:00:00  RO1    partner not ready',
  '09:00:00  RO1 B  role none',
  '09:02:00  RO1 B  module inserted',
  '09:02:00  RO1 B  role standby',
  '09:02:00  RO1 B  model Tern-4',
  '09:02:00  RO1 B  serial T4-2',
  '09:02:00  RO1 B  firmware 6.2.0',
  '09:02:00  RO1 B  light flashing',
  '09:03:00  RO1 B  reflash start',
  '09:05:00  RO1 B  reflash end',
  '09:05:00  RO1 B  firmware 6.4.1',
  '09:07:00  RO1    partner ready',
  '09:09:00  RO1 B  light steady',
  '09:20:00  RO1    switchover command',
  '09:20:01  RO1 A  role standby',
  '09:20:01.1  RO1 B  role active',
  '09:45:00  RO1    configuration current',
];

/** A change of the clean journal: lines to leave out, and lines to add. */
export interface SwapStory {
  readonly without?: readonly string[];
  readonly plus?: readonly string[];
  /** Its stamps tell whole seconds only. */
  readonly isWhole?: boolean;
  /** Files beside the journal, or with `isAlone` in its place. */
  readonly files?: Readonly<Record<string, string>>;
  readonly isAlone?: boolean;
}

/** What a story's files say, and how a line of one of them is shown: of the journal in its short form, with single blanks. */
export async function analyseSwap({ without = [], plus = [], ...rest }: SwapStory): Promise<{
  readonly analysed: Analysed;
  readonly shown: (line: SourceLine) => string;
}> {
  const { isWhole = false, files = {}, isAlone = false } = rest;
  const unknown = without.filter((part) => !cleanJournal.some((line) => line.includes(part)));
  if (unknown.length > 0) throw new Error(`The clean journal has no line with ${unknown.join(', ')}.`);
  const kept = cleanJournal.filter((line) => !without.some((part) => line.includes(part)));
  const journal = isAlone ? [] : [...kept, ...plus].sort();
  const text = journalText(journal.join('\n'));
  const own = isAlone ? {} : { 'ro1.log': isWhole ? text.replaceAll('.000Z', 'Z') : text };
  const linesOf = new Map(Object.entries(files).map(([name, content]) => [name, content.split('\n')]));
  linesOf.set(
    'ro1.log',
    journal.map((line) => line.replaceAll(/ +/g, ' ')),
  );
  return {
    analysed: await analyseTexts({ ...own, ...files }),
    shown: ({ file, line }) => linesOf.get(file)?.[line - 1] ?? `${file} has no line ${line}`,
  };
}

/** The only swap of a story, judged by all checks. */
export async function onlySwap(story: SwapStory): Promise<Swap> {
  const { analysed } = await analyseSwap(story);
  const [swap, ...others] = verify(analysed, null, { from: null, to: null }, null).swaps;
  if (swap === undefined || others.length > 0) throw new Error('There is not just one swap.');
  return swap;
}

/** Milliseconds UTC of a clock of 14 March 2026. */
export function at(clock: string): number {
  return Date.parse(`2026-03-14T${clock}Z`);
}

/** A row of a poll as it stands in its file. */
export function row(clock: string, unit: string, parameter: string, value: string): string {
  return `2026-03-14T${clock}.0Z,${unit},${parameter},${value}`;
}

/** From which clock on something has which value: unit, parameter, then clock and value in turn. */
export type Polled = readonly [unit: string, parameter: string, ...values: (readonly [string, string])[]];

/**
 * A poll of 14 March 2026 as a file of the layout readings, from one clock to another: one row per reading. `gaps` are spans,
 * their ends included, in which nothing was read.
 */
export function pollText(
  [from, to]: readonly [string, string],
  everySeconds: number,
  polled: readonly Polled[],
  gaps: readonly (readonly [string, string])[] = [],
): string {
  const rows: string[] = ['time,unit,parameter,value'];
  for (let time = at(from); time <= at(to); time += everySeconds * 1000) {
    const clock = new Date(time).toISOString().slice(11, 19);
    if (gaps.some(([begin, end]) => clock >= begin && clock <= end)) continue;
    for (const [unit, parameter, ...values] of polled) {
      const value = values.findLast(([since]) => since <= clock)?.[1];
      if (value !== undefined) rows.push(row(clock, unit, parameter, value));
    }
  }
  return `${rows.join('\n')}\n`;
}
