import { describe, expect, test } from 'vitest';
import { changesFrom } from '../../../src/change-columns.ts';
import { allChanges } from '../../../src/changes.ts';
import { observationFor, unobservedIn } from '../../../src/timeline/observation.ts';
import type { Change, ImportedFile } from '../../../src/vocabulary.ts';
import { at, type Polled, pollText } from '../../support/clean-swap.ts';
import { observedOf, timelineOf, unobservedOf } from '../../support/observed.ts';
import { clockOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const ready: Polled = ['RO1', 'partner-ready', ['10:00:00', 'yes']];
const light: Polled = ['RO1-B', 'light', ['10:00:00', 'steady']];
const long = ['10:00:00', '11:00:00'] as const;

describe('a poll observes', () => {
  test('what it reads, between its readings, save spans longer than three times its spacing', async () => {
    const poll = pollText(long, 10, [ready], [['10:20:10', '10:29:50']]);
    const timeline = await timelineOf({ 'poll.csv': poll });
    expect(observedOf(timeline, null, 'partner-ready')).toEqual(['10:00:00-10:20:00', '10:30:00-11:00:00']);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual(['10:20:00-10:30:00']);
    // What it never reads it does not observe.
    expect(observationFor(timeline, 'B', 'light')).toEqual({ observed: [], unobserved: [], seenUntil: null });
  });

  test('each signal by itself: the gap of a poll of one leaves another observed', async () => {
    const files = {
      'ready.csv': pollText(long, 10, [ready], [['10:20:10', '10:29:50']]),
      'light.csv': pollText(long, 10, [light], [['10:40:10', '10:44:50']]),
    };
    const timeline = await timelineOf(files);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual(['10:20:00-10:30:00']);
    expect(unobservedOf(timeline, 'B', 'light')).toEqual(['10:40:00-10:45:00']);
    // What is unobserved of the pair is what is unobserved of its ready partner.
    expect(timeline.unobserved.map((u) => clockOf(u.from))).toEqual(['10:20:00']);
  });

  test('up to three spacings after its last reading, where another source goes on', async () => {
    const files = {
      'ready.csv': pollText(['10:00:00', '10:30:00'], 10, [ready]),
      'light.csv': pollText(long, 10, [light]),
    };
    const timeline = await timelineOf(files);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual(['10:30:30-11:00:00']);
    expect(clockOf(observationFor(timeline, null, 'partner-ready').seenUntil ?? 0)).toBe('10:30:00');
  });

  test('nothing before its first reading', async () => {
    const files = {
      'ready.csv': pollText(['10:30:00', '11:00:00'], 10, [ready]),
      'light.csv': pollText(long, 10, [light]),
    };
    const timeline = await timelineOf(files);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual(['10:00:00-10:30:00']);
  });

  test('the same in one file and in two that overlap while a signal is blank', async () => {
    const blank: Polled = [
      'RO1-B',
      'light',
      ['10:00:00', 'steady'],
      ['10:20:00', ''],
      ['10:40:00', 'flashing'],
    ];
    const role: Polled = ['RO1-B', 'role', ['10:00:00', 'standby']];
    const part = (from: string, to: string): string => pollText([from, to], 10, [blank, role]);
    const whole = await timelineOf({ 'poll.csv': part(...long) });
    const parts = await timelineOf({
      '1.csv': part('10:00:00', '10:32:00'),
      '2.csv': part('10:28:00', '11:00:00'),
    });
    expect(unobservedOf(whole, 'B', 'light')).toEqual([]);
    expect(unobservedOf(parts, 'B', 'light')).toEqual([]);
    // With eight minutes between the two parts there is a gap, of the light as of the role.
    const apart = await timelineOf({
      '1.csv': part('10:00:00', '10:26:00'),
      '2.csv': part('10:34:00', '11:00:00'),
    });
    expect(unobservedOf(apart, 'B', 'light')).toEqual(['10:26:30-10:34:00']);
    expect(unobservedOf(apart, 'B', 'role')).toEqual(['10:26:30-10:34:00']);
  });

  test('nothing before its first reading, though the same unit was read before and had a gap', async () => {
    const steady: Polled = ['RO1-B', 'light', ['10:00:00', 'steady']];
    const role: Polled = ['RO1-B', 'role', ['10:30:00', 'standby']];
    const poll = pollText(long, 10, [steady, role], [['10:10:10', '10:19:50']]);
    const timeline = await timelineOf({ 'poll.csv': poll });
    expect(unobservedOf(timeline, 'B', 'role')).toEqual(['10:00:00-10:30:00']);
    expect(unobservedOf(timeline, 'B', 'light')).toEqual(['10:10:00-10:20:00']);
  });

  test('nothing before its first reading: that is told by the first row of the pair', async () => {
    const files = {
      'late.csv': pollText(['10:30:00', '11:00:00'], 10, [ready]),
      'light.csv': pollText(long, 10, [light]),
    };
    const { unobserved } = observationFor(await timelineOf(files), null, 'partner-ready');
    expect(unobserved.map((u) => u.evidence.map((l) => `${l.file}:${l.line}`))).toEqual([
      ['light.csv:2', 'late.csv:2'],
    ]);
  });

  test('of several polls what one of them reads', async () => {
    const files = {
      'a.csv': pollText(long, 10, [ready], [['10:20:10', '10:29:50']]),
      'b.csv': pollText(['10:00:05', '10:25:05'], 10, [ready]),
    };
    // The second goes on to 10:25:05, and counts for three spacings more.
    expect(unobservedOf(await timelineOf(files), null, 'partner-ready')).toEqual(['10:25:35-10:30:00']);
  });

  test('rests on the lines before and after', async () => {
    const poll = pollText(long, 10, [ready], [['10:20:10', '10:29:50']]);
    const [gap] = unobservedIn(
      await timelineOf({ 'poll.csv': poll }),
      null,
      'partner-ready',
      at('10:25:00'),
      at('10:27:00'),
    );
    // Cut to the span that is asked for. Line 2 is 10:00:00: twenty minutes are 120 lines on.
    expect([clockOf(gap?.from ?? 0), clockOf(gap?.to ?? 0)]).toEqual(['10:25:00', '10:27:00']);
    expect(gap?.evidence.map((l) => l.line)).toEqual([122, 123]);
  });
});

describe('one column of a poll', () => {
  // Both columns are read every 10 s for an hour, by two units of one file.
  const files = { 'poll.csv': pollText(long, 10, [ready, light]) };
  /** As if the column were read until a clock only. */
  const readUntil =
    (clock: string) =>
    (file: ImportedFile): ImportedFile => ({
      ...file,
      streams: file.streams.map((stream) => ({
        ...stream,
        reads: stream.signals.flatMap((signal) =>
          signal === 'light' || signal === 'partner-ready'
            ? [{ subject: stream.subject, signal, to: signal === 'light' ? at(clock) : at('11:00:00') }]
            : [],
        ),
      })),
    });
  /** As if the column were not read for a while: its next reading restates what it was. */
  const resumed =
    (from: string, to: string) =>
    (file: ImportedFile): ImportedFile => {
      const [first] = allChanges(file.changes).filter((c) => c.signal === 'light');
      if (first === undefined) throw new Error('no light was read');
      const again: Change = { ...first, earliest: at(from), time: at(to), before: first.value, line: 99 };
      return { ...file, changes: changesFrom([...allChanges(file.changes), again]) };
    };

  test('that stops being read is unobserved from three spacings after its last reading on', async () => {
    const timeline = await timelineOf(files, readUntil('10:20:00'));
    expect(unobservedOf(timeline, 'B', 'light')).toEqual(['10:20:30-11:00:00']);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual([]);
  });

  test('that is read again after it was not is unobserved in between', async () => {
    const timeline = await timelineOf(files, resumed('10:20:00', '10:40:00'));
    expect(unobservedOf(timeline, 'B', 'light')).toEqual(['10:20:00-10:40:00']);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual([]);
    // What is read again as it was is no change.
    expect(timeline.events.filter((e) => e.signal === 'light').map((e) => clockOf(e.time))).toEqual([
      '10:00:00',
    ]);
  });
});

describe('a journal observes', () => {
  test('what it ever tells of a pair, from its first to its last row, whatever pair those are of', async () => {
    const lines = ['10:00:00 RO2 A link a up', '10:30:00 RO1 B light steady', '11:00:00 RO2 A link b up'];
    const timeline = await timelineOf({ 'a.log': journalText(lines.join('\n')) });
    expect(observedOf(timeline, 'B', 'light')).toEqual(['10:00:00-11:00:00']);
    expect([clockOf(timeline.from), clockOf(timeline.to)]).toEqual(['10:00:00', '11:00:00']);
    expect(unobservedOf(timeline, 'B', 'light')).toEqual([]);
  });

  test('nothing of what it never tells', async () => {
    const files = {
      'a.log': journalText('10:00:00 RO1 B light steady\n11:00:00 RO1 B light off'),
      'poll.csv': pollText(['10:20:00', '10:40:00'], 10, [ready]),
    };
    const timeline = await timelineOf(files);
    expect(unobservedOf(timeline, null, 'partner-ready')).toEqual(['10:00:00-10:20:00', '10:40:30-11:00:00']);
    expect(unobservedOf(timeline, 'B', 'light')).toEqual([]);
  });

  test('where a poll does not: together nothing is left', async () => {
    const files = {
      'a.log': journalText('10:10:00 RO1 partner ready\n10:40:00 RO1 A link a up'),
      'poll.csv': pollText(long, 10, [ready], [['10:20:10', '10:29:50']]),
    };
    expect(unobservedOf(await timelineOf(files), null, 'partner-ready')).toEqual([]);
  });
});

describe('field notes observe', () => {
  const notes = 'Pair RO1\n2026-03-14\n10:10 light steady on slot B\n10:50 light off on slot B\n';

  test('nothing: what only they tell is unobserved throughout', async () => {
    const files = { 'notes.txt': notes, 'poll.csv': pollText(long, 10, [ready]) };
    const timeline = await timelineOf(files);
    expect(timeline.events.filter((e) => e.signal === 'light').map((e) => `${e.kind} ${e.value}`)).toEqual([
      'note steady',
      'note off',
    ]);
    expect(observedOf(timeline, 'B', 'light')).toEqual([]);
    expect(unobservedOf(timeline, 'B', 'light')).toEqual(['10:00:00-11:00:00']);
  });
});
