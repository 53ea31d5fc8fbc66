import { attemptsOf } from '../../src/timeline/attempts.ts';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { Attempt } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** The attempts of every pair that some files tell of. */
export async function attemptsIn(files: Readonly<Record<string, string>>): Promise<readonly Attempt[]> {
  const { facts } = await analyseTexts(files);
  return facts.flatMap((f) => attemptsOf(f.timeline, f.bringUps, defaultRules));
}

/** An attempt in a line: `B sync failed 60`. */
export function attemptLine({ half, cause, outcome, watched }: Attempt): string {
  return `${half} ${cause} ${outcome} ${watched.seconds}`;
}

/** A journal of a pair that has been ready since 10:00, and the lines that follow. */
export function readyJournal(...lines: readonly string[]): string {
  const ready = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
  return journalText([...ready, ...lines].join('\n'));
}

/** The attempts of such a journal, each in a line. */
export async function attemptsAfter(...lines: readonly string[]): Promise<readonly string[]> {
  return (await attemptsIn({ 'ro1.log': readyJournal(...lines) })).map(attemptLine);
}

/** A poll of readiness on 14 March 2026: clock and value. */
export function readinessPoll(...readings: readonly (readonly [string, 'yes' | 'no'])[]): string {
  const rows = readings.map(([clock, value]) => `2026-03-14T${clock}.000Z,RO1,partner-ready,${value}`);
  return `time,unit,parameter,value\n${rows.join('\n')}\n`;
}

/** Lines whose stamps have no decimals, of the same day: `10:00:00 RO1-A role active`. */
export function wholeSeconds(text: string): string {
  const lines = text
    .trim()
    .split('\n')
    .map((line) => line.trim().replace(/^(\S+) /, '2026-03-14T$1Z '));
  return `${lines.join('\n')}\n`;
}
