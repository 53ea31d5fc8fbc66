import { describe, expect, test } from 'vitest';
import type { TimelineEvent } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const said = ({ time, earliest, half, signal, value, before }: TimelineEvent): string => {
  const clock = (at: number): string => new Date(at).toISOString().slice(11, 23).replace('.000', '');
  const when = earliest === time ? clock(time) : `${clock(earliest)}..${clock(time)}`;
  return `${when} ${half ?? 'pair'} ${signal} ${value ?? '-'} was ${before ?? '-'}`;
};

async function eventsOf(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  return (await analyseTexts(files)).timelines.flatMap((t) => t.events.map(said));
}

const poll = (rows: readonly string[]): string =>
  `time,unit,parameter,value\n${rows.map((r) => `2026-03-14T${r}`).join('\n')}\n`;

describe('the timeline', () => {
  test('joins a journal entry and the poll that saw the same change into one exact event', async () => {
    const events = await eventsOf({
      'poll.csv': poll([
        '10:00:00.0Z,RO1,partner-ready,yes',
        '10:00:10.0Z,RO1,partner-ready,yes',
        '10:00:20.0Z,RO1,partner-ready,no',
      ]),
      'ro1.log': journalText('10:00:14  RO1  partner not ready'),
    });
    expect(events).toEqual([
      '10:00:00 pair partner-ready yes was -',
      '10:00:14 pair partner-ready no was yes',
    ]);
  });

  test('narrows two polls to the overlap of their bounds', async () => {
    const rows = (phase: number): readonly string[] =>
      [0, 1, 2].map((i) => `10:00:${i}${phase}.0Z,RO1,partner-ready,${i < 2 ? 'yes' : 'no'}`);
    const events = await eventsOf({ 'a.csv': poll(rows(0)), 'b.csv': poll(rows(4)) });
    expect(events).toEqual([
      '10:00:00 pair partner-ready yes was -',
      '10:00:14..10:00:20 pair partner-ready no was yes',
    ]);
  });

  test('puts an unaddressed insertion in the half that is not active, an unaddressed removal in the standby', async () => {
    const events = await eventsOf({
      'ro1.log': journalText(
        '10:00:00 RO1 B role active\n10:00:00 RO1 A role standby\n10:05:00 RO1 module removed\n10:06:00 RO1 module inserted',
      ),
    });
    // A half that is out has the role none; what the next module takes is not known until a line states it.
    expect(events.slice(2)).toEqual([
      '10:05:00 A removed - was -',
      '10:05:00 A role none was standby',
      '10:06:00 A role - was none',
      '10:06:00 A inserted - was -',
    ]);
  });

  test('gives an unaddressed removal to the half that stops reporting', async () => {
    const events = await eventsOf({
      'ro1.log': journalText(
        '10:00:00 RO1 A role active\n10:00:00 RO1 B role standby\n10:05:00 RO1 module removed\n10:05:02 RO1 A role none',
      ),
    });
    expect(events).toContain('10:05:00 A removed - was -');
  });

  test('takes ready, pulled, ready for a loss at the removal', async () => {
    const events = await eventsOf({
      'ro1.log': journalText(
        '10:00:00 RO1 A role active\n10:00:00 RO1 B role standby\n10:00:00 RO1 partner ready\n10:05:00 RO1 B module removed\n10:07:00 RO1 B module inserted\n10:09:00 RO1 partner ready',
      ),
    });
    expect(events.filter((e) => e.includes('partner-ready'))).toEqual([
      '10:00:00 pair partner-ready yes was -',
      '10:05:00 pair partner-ready no was yes',
      '10:09:00 pair partner-ready yes was no',
    ]);
  });

  test('counts a first journal entry "not ready" as a loss, a first reading as a state', async () => {
    const entry = await analyseTexts({
      'ro1.log': journalText('10:00:00 RO1 partner not ready\n10:01:00 RO1 partner ready'),
    });
    const reading = await analyseTexts({
      'poll.csv': poll(['10:00:00.0Z,RO1,partner-ready,no', '10:00:10.0Z,RO1,partner-ready,yes']),
    });
    expect(entry.facts[0]?.losses.map((l) => l.kind)).toEqual(['counted']);
    expect(reading.facts[0]?.losses).toEqual([]);
  });

  test('within one stamp a removal comes before the loss it brings, and the loss is planned', async () => {
    const { facts } = await analyseTexts({
      'ro1.log': journalText(
        '10:00:00 RO1 A role active\n10:00:00 RO1 B role standby\n10:00:00 RO1 partner ready\n10:04:57 RO1 partner not ready\n10:05:00 RO1 B module removed\n10:07:00 RO1 B module inserted\n10:09:00 RO1 partner ready',
      ),
    });
    expect(facts[0]?.losses.map((l) => l.kind)).toEqual(['planned']);
  });

  test('stamps without decimals carry a second in every duration that rests on them', async () => {
    const log =
      '2026-03-14T10:00:00Z RO1-B role standby\n2026-03-14T10:00:01Z RO1-B module restart\n2026-03-14T10:00:01Z RO1 partner not ready\n2026-03-14T10:02:21Z RO1 partner ready\n2026-03-14T10:09:00Z RO1-B light off\n';
    const { facts } = await analyseTexts({ 'ro1.log': log });
    expect(facts[0]?.bringUps[0]?.sync).toMatchObject({ seconds: 140, low: 139, high: 141 });
  });

  test('a note of what a better source logged stays a note; alone it counts, with the bounds of its minute', async () => {
    const notes = 'Pair RO1\n2026-03-14\n10:09 pulled standby from slot B\n';
    const alone = await eventsOf({ 'notes.txt': notes });
    const beside = await eventsOf({
      'notes.txt': notes,
      'ro1.log': journalText('10:04:30 RO1 B module removed'),
    });
    expect(alone).toEqual(['10:09:00..10:10:00 B removed - was -', '10:09:00..10:10:00 B role none was -']);
    expect(beside.filter((e) => e.includes('removed -'))).toEqual(['10:04:30 B removed - was -']);
    expect(beside.filter((e) => e.includes(' note '))).toHaveLength(1);
  });
});
