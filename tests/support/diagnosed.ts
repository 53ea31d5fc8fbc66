import { diagnose } from '../../src/pipeline.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { answerOf } from './check-cause.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** A pair as it should be at 10:00, and the last line of its log. */
export const begin = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 partner ready',
  '10:00:00 RO1 B light steady',
];
export const end = '10:30:00 RO1 A light off';

/** The diagnosis of a log of some lines. */
export async function diagnosed(lines: readonly string[], pair: string | null = null): Promise<Diagnosis> {
  return diagnose(await analyseTexts({ 'a.log': journalText([...lines].sort().join('\n')) }), pair);
}
/** What is answered of the pair after some lines besides. */
export const answer = async (...lines: readonly string[]): Promise<readonly string[]> =>
  answerOf(await diagnosed([...begin, ...lines, end]));
/** Lines that many stories share. */
export const lost = '10:10:00 RO1 partner not ready';
export const restart = '10:10:00 RO1 B module restart';
export const lateLight = [restart, lost, '10:10:00 RO1 B light flashing', '10:12:00 RO1 partner ready'];
