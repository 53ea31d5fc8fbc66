import { describe, expect, test } from 'vitest';
import { contradictedNotes } from '../../../src/analyze/contradicted-notes.ts';
import { isHappening } from '../../../src/vocabulary.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

/** Half B out from 09:10 to 09:14, by a poll that shows an empty slot. */
const serial: Polled = ['RO1-B', 'serial', ['09:00:00', 'T2-1'], ['09:10:00', ''], ['09:14:00', 'T2-2']];
const light: Polled = ['RO1-B', 'light', ['09:00:00', 'steady']];
const polled = (
  spacing: number,
  series: readonly Polled[] = [serial],
  gaps: readonly (readonly [string, string])[] = [],
): string => pollText(['09:00:00', '10:00:00'], spacing, series, gaps);
const notes = (out: string, back: string): string =>
  `2026-03-14\nRO1\n${out} pulled module from slot B\n${back} fitted module in slot B\n`;

checkAnalyzer(contradictedNotes, {
  reports: [
    {
      name: 'out from 09:30 to 09:34 by the notes, in place by a poll of every 30 s',
      files: { 'notes.txt': notes('09:30', '09:34'), 'poll.csv': polled(30) },
      findings: [{ id: 'contradicted-note', half: 'B' }],
    },
    {
      name: 'out from 09:20 to 09:59 by the notes, in place by the poll for longer than a note comes late',
      files: {
        'notes.txt': notes('09:20', '09:59'),
        'poll.csv': polled(30, [[...serial, ['09:50:00', ''], ['09:55:00', 'T2-2']]]),
      },
      findings: [{ id: 'contradicted-note', half: 'B' }],
    },
    {
      name: 'one removal by the notes, one replacement by a poll that looks too seldom, half an hour apart',
      files: { 'notes.txt': notes('09:40', '09:43'), 'poll.csv': polled(240) },
      findings: [{ id: 'contradicted-note', half: 'B' }],
    },
  ],
  quiet: [
    {
      name: 'two removals by the notes, one replacement by a poll that looks too seldom: a module was reseated',
      files: {
        'notes.txt': `${notes('09:11', '09:14')}09:40 pulled module from slot B\n09:43 fitted module in slot B\n`,
        'poll.csv': polled(240),
      },
    },
    {
      name: 'notes three minutes late, in place by the poll at their end only',
      files: { 'notes.txt': notes('09:12', '09:16'), 'poll.csv': polled(30) },
    },
    {
      name: 'a poll that looks more seldom than the module was out',
      files: {
        'notes.txt': notes('09:30', '09:34'),
        'poll.csv': polled(240, [[...serial, ['09:50:00', ''], ['09:55:00', 'T2-3']]]),
      },
    },
    {
      name: 'a poll with a gap where the notes have the module out',
      files: {
        'notes.txt': notes('09:30', '09:34'),
        'poll.csv': polled(
          30,
          [[...serial, ['09:50:00', ''], ['09:55:00', 'T2-3']]],
          [['09:29:00', '09:36:00']],
        ),
      },
    },
    {
      name: 'a poll that never shows a slot to be empty',
      files: {
        'notes.txt': notes('09:30', '09:34'),
        'poll.csv': polled(30, [['RO1-B', 'serial', ['09:00:00', 'T2-1']], light]),
      },
    },
    {
      name: 'a removal of which nothing says when it ended',
      files: { 'notes.txt': notes('09:30', '09:34').replace('fitted', 'looked at'), 'poll.csv': polled(30) },
    },
    { name: 'no readings at all', files: { 'notes.txt': notes('09:30', '09:34') } },
  ],
  notObserved: [],
});

describe('notes that readings speak against', () => {
  const told = `${notes('09:30', '09:34')}09:36 reflash started in slot B\n09:39 reflash finished in slot B\n`;
  const happened = async (text: string): Promise<readonly string[]> => {
    const { timeline } = await factsOfPair({ 'notes.txt': text, 'poll.csv': polled(30) });
    return timeline.events
      .filter((e) => isHappening(e.signal) && e.sources.some((s) => s.file === 'notes.txt'))
      .map((e) => e.signal)
      .sort();
  };

  test('stay in the timeline as notes, with all that they tell of the same work', async () => {
    expect(await happened(told)).toEqual(['note', 'note', 'note', 'note']);
  });

  test('leave the next work of the same notes what it is', async () => {
    // The poll ends at 10:00: nothing speaks against what the notes tell of 10:10.
    const more = `${told}10:10 pulled module from slot B\n10:14 fitted module in slot B\n`;
    expect(await happened(more)).toEqual(['inserted', 'note', 'note', 'note', 'note', 'removed']);
  });
});
