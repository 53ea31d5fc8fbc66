import { describe, expect, test } from 'vitest';
import { endLines, uniqueLines } from '../../../src/timeline/evidence.ts';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

describe('the lines at the ends of a log', () => {
  test('are the first and the last that were read of the pair, whichever file they are in', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 10, [['RO1', 'partner-ready', ['10:00:00', 'yes']]]);
    const log = journalText('10:05:00 RO1 A role active\n10:20:00 RO1 A light off');
    for (const files of [
      { 'a.csv': poll, 'b.log': log },
      { 'b.log': log, 'a.csv': poll },
    ]) {
      const { timeline } = await factsOfPair(files);
      expect(endLines(timeline).map((l) => `${l.file}:${l.line}`)).toEqual(['a.csv:2', 'b.log:2']);
    }
    const { timeline } = await factsOfPair(['10:30:00 RO1 A light off']);
    expect(endLines(timeline)).toHaveLength(1);
  });

  test('each counts once', () => {
    const line = (number: number, file = 'a.log'): { file: string; line: number; text: string } => ({
      file,
      line: number,
      text: '',
    });
    expect(uniqueLines([line(1), line(2), line(1), line(2, 'b.log'), line(2)])).toEqual([
      line(1),
      line(2),
      line(2, 'b.log'),
    ]);
  });
});
