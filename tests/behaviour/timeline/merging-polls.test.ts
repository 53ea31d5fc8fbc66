import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { journalText } from '../../support/read-text.ts';
import { told } from '../../support/told-events.ts';

describe('what a poll saw between two readings', () => {
  // Read every 10 s: yes until 10:00:10, no from 10:00:20 on.
  const poll = pollText(['10:00:00', '10:01:00'], 10, [
    ['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:00:20', 'no']],
  ]);
  const beside = async (clock: string, isWhole = false): Promise<string | undefined> => {
    const text = journalText(`${clock} RO1 partner not ready`);
    const found = await told(
      { 'a.log': isWhole ? text.replace('.000Z', 'Z') : text, 'poll.csv': poll },
      'partner-ready',
    );
    return found.at(-1);
  };

  test('is what a journal told within those bounds, which do not reach to the reading before', async () => {
    expect(await beside('10:00:10.001')).toBe(
      '10:00:10.001 pair partner-ready no was yes a.log:1 poll.csv:4',
    );
    expect(await beside('10:00:19.999')).toBe(
      '10:00:19.999 pair partner-ready no was yes a.log:1 poll.csv:4',
    );
    expect(await beside('10:00:10')).toBe('10:00:10 pair partner-ready no was yes a.log:1');
    expect(await beside('10:00:20.001')).toBe('10:00:10..10:00:20 pair partner-ready no was yes poll.csv:4');
  });

  test('may be what a log of whole seconds told within a second of them', async () => {
    expect(await beside('10:00:10', true)).toBe('10:00:10 pair partner-ready no was yes a.log:1 poll.csv:4');
    expect(await beside('10:00:09', true)).toBe('10:00:09 pair partner-ready no was yes a.log:1');
  });

  test('is what a log of whole seconds told after them, by its stamp', async () => {
    // Read at half seconds: in (10:00:10.5, 10:00:20.5], and 10:00:21 may stand for an instant up to a second earlier.
    const half = poll.replaceAll(/\.0Z/g, '.5Z');
    const log = journalText('10:00:21 RO1 partner not ready').replace('.000Z', 'Z');
    expect((await told({ 'a.log': log, 'poll.csv': half }, 'partner-ready')).at(-1)).toBe(
      '10:00:21 pair partner-ready no was yes a.log:1 poll.csv:4',
    );
  });

  test('is what the finer poll saw where one of whole seconds saw it just before', async () => {
    // In (10:00:10, 10:00:20] by stamps of whole seconds, and in (10:00:20.5, 10:00:25.5] by half seconds.
    const whole = poll.replaceAll(/\.0Z/g, 'Z');
    const fine = pollText(['10:00:00', '10:01:00'], 5, [
      ['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:00:25', 'no']],
    ]).replaceAll(/\.0Z/g, '.5Z');
    expect((await told({ 'fine.csv': fine, 'whole.csv': whole }, 'partner-ready')).slice(1)).toEqual([
      '10:00:20.500..10:00:25.500 pair partner-ready no was yes fine.csv:7 whole.csv:4',
    ]);
  });

  test('ended at the first reading of another poll that begins within those bounds', async () => {
    const late = pollText(['10:00:15', '10:01:05'], 10, [['RO1', 'partner-ready', ['10:00:00', 'no']]]);
    expect((await told({ 'a.csv': poll, 'b.csv': late }, 'partner-ready')).slice(1)).toEqual([
      '10:00:10..10:00:15 pair partner-ready no was yes a.csv:4 b.csv:2',
    ]);
  });

  test('is narrowed by another poll, and that by a third', async () => {
    const phase = (seconds: string): string =>
      pollText([`10:00:0${seconds}`, '10:01:00'], 10, [
        ['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:00:17', 'no']],
      ]);
    // No later than 10:00:17, 10:00:18 and 10:00:19; after 10:00:07, 10:00:08 and 10:00:16.
    const files = { 'a.csv': phase('7'), 'b.csv': phase('8'), 'c.csv': phase('6') };
    expect((await told(files, 'partner-ready')).at(-1)).toBe(
      '10:00:16..10:00:17 pair partner-ready no was yes a.csv:3 b.csv:3 c.csv:4',
    );
  });
});

describe('a light read steady before a module was taken out and steady after it came back', () => {
  const log = journalText('10:05:00 RO1 B module removed\n10:06:00 RO1 B module inserted');
  const read = (from: string, to: string): string =>
    pollText([from, to], 10, [['RO1-B', 'light', [from, 'steady']]]);

  test('became steady again between the last reading before and the first after, of whatever poll', async () => {
    const found = await told(
      { 'a.log': log, '1.csv': read('10:00:00', '10:04:00'), '2.csv': read('10:08:00', '10:20:00') },
      'light',
    );
    expect(found).toEqual([
      '10:00:00 B light steady was - 1.csv:2',
      '10:05:00..10:08:00 B light steady was steady 2.csv:2',
    ]);
  });

  test('did not where another poll read it through', async () => {
    const found = await told(
      { 'a.log': log, '1.csv': read('10:00:00', '10:20:00'), '2.csv': read('10:08:00', '10:20:00') },
      'light',
    );
    expect(found).toEqual(['10:00:00 B light steady was - 1.csv:2']);
  });
});
