import { describe, expect, test } from 'vitest';
import type { Signal } from '../../../src/vocabulary.ts';
import { pollText } from '../../support/clean-swap.ts';
import { eventLine, factsOfPair } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';
import { told } from '../../support/told-events.ts';

const one = (signal: Signal, ...lines: readonly string[]): Promise<readonly string[]> =>
  told({ 'a.log': journalText(lines.join('\n')) }, signal);
const two = (signal: Signal, a: string, b: string): Promise<readonly string[]> =>
  told({ 'a.log': journalText(a), 'b.log': journalText(b) }, signal);

describe('what two sources tell of', () => {
  test('is one happening if their stamps are at most 2 s apart; the earlier counts', async () => {
    expect(await two('restart', '10:05:00 RO1 B module restart', '10:05:02 RO1 B module restart')).toEqual([
      '10:05:00 B restart - was - a.log:1 b.log:1',
    ]);
    expect(await two('restart', '10:05:02 RO1 B module restart', '10:05:00 RO1 B module restart')).toEqual([
      '10:05:00 B restart - was - a.log:1 b.log:1',
    ]);
    expect(
      await two('restart', '10:05:00 RO1 B module restart', '10:05:02.001 RO1 B module restart'),
    ).toEqual(['10:05:00 B restart - was - a.log:1', '10:05:02.001 B restart - was - b.log:1']);
  });

  test('is not one if it is of two halves, or another value', async () => {
    expect(
      await two('restart', '10:05:00 RO1 A module restart', '10:05:00 RO1 B module restart'),
    ).toHaveLength(2);
    expect(await two('light', '10:05:00 RO1 B light steady', '10:05:01 RO1 B light flashing')).toEqual([
      '10:05:00 B light steady was - a.log:1',
      '10:05:01 B light flashing was steady b.log:1',
    ]);
  });

  test('is two if one source tells it twice', async () => {
    const lines = ['10:05:00 RO1 B module restart', '10:05:01 RO1 B warm restart'];
    expect(await one('restart', ...lines)).toHaveLength(2);
    const [first, second] = lines;
    expect(await two('restart', lines.join('\n'), [first, second].join('\n'))).toEqual([
      '10:05:00 B restart - was - a.log:1 b.log:1',
      '10:05:01 B restart - was - a.log:2 b.log:2',
    ]);
  });

  test('in one file rests on their lines in the order of the file', async () => {
    const lines = [
      '10:00:00 RO1 partner ready',
      '10:05:00 RO1 B partner not ready',
      '10:05:01 RO1 A partner not ready',
    ];
    expect((await one('partner-ready', ...lines)).slice(1)).toEqual([
      '10:05:00 pair partner-ready no was yes a.log:2 a.log:3',
    ]);
  });

  test('has the stamp of the source that prints decimals', async () => {
    const whole = journalText('10:05:00 RO1 B module restart').replace('.000Z', 'Z');
    const fine = journalText('10:05:00.400 RO1 B module restart');
    for (const files of [
      { 'a.log': whole, 'b.log': fine },
      { 'b.log': fine, 'a.log': whole },
    ]) {
      expect(await told(files, 'restart')).toEqual(['10:05:00.400 B restart - was - a.log:1 b.log:1']);
      const { timeline } = await factsOfPair(files);
      expect(timeline.events.map((e) => e.resolution)).toEqual([0]);
    }
  });

  test('has the stamp with decimals also where the other is later', async () => {
    const files = {
      'a.log': journalText('10:05:00.400 RO1 B module restart'),
      'b.log': journalText('10:05:01 RO1 B module restart').replace('.000Z', 'Z'),
    };
    expect((await factsOfPair(files)).timeline.events.map((e) => [eventLine(e), e.resolution])).toEqual([
      ['10:05:00.400 B restart - was -', 0],
    ]);
  });

  test('three of them tell of is one too', async () => {
    const files = {
      'a.log': journalText('10:05:00 RO1 B module restart'),
      'b.log': journalText('10:05:01 RO1 B module restart'),
      'c.log': journalText('10:05:02 RO1 B module restart'),
    };
    expect(await told(files, 'restart')).toEqual(['10:05:00 B restart - was - a.log:1 b.log:1 c.log:1']);
  });
});

describe('a state', () => {
  test('that is said again is no change', async () => {
    expect(await one('light', '10:00:00 RO1 B light steady', '10:05:00 RO1 B light steady')).toEqual([
      '10:00:00 B light steady was - a.log:1',
    ]);
  });

  test('that is said again after its half restarted was lost in between', async () => {
    const lines = [
      '10:00:00 RO1 B light steady',
      '10:04:00 RO1 B module restart',
      '10:05:00 RO1 B light steady',
    ];
    expect(await one('light', ...lines)).toEqual([
      '10:00:00 B light steady was - a.log:1',
      '10:05:00 B light steady was steady a.log:3',
    ]);
    const other = [
      '10:00:00 RO1 B light steady',
      '10:04:00 RO1 A module restart',
      '10:05:00 RO1 B light steady',
    ];
    expect(await one('light', ...other)).toHaveLength(1);
  });

  test('of readiness that is said again after the standby was pulled was lost when it was pulled', async () => {
    const roles = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
    const again = '10:08:00 RO1 partner ready';
    expect(await one('partner-ready', ...roles, '10:05:00 RO1 B module removed', again)).toEqual([
      '10:00:00 pair partner-ready yes was - a.log:3',
      '10:05:00 pair partner-ready no was yes a.log:4',
      '10:08:00 pair partner-ready yes was no a.log:5',
    ]);
    // A restart of the active half takes nothing from the readiness of its partner.
    expect(await one('partner-ready', ...roles, '10:05:00 RO1 A module restart', again)).toHaveLength(1);
  });

  test('that a later poll first reads as another changed in between', async () => {
    const early = pollText(['10:00:00', '10:10:00'], 10, [['RO1-B', 'firmware', ['10:00:00', '6.2.0']]]);
    const late = pollText(['10:20:00', '10:30:00'], 10, [['RO1-B', 'firmware', ['10:00:00', '6.4.1']]]);
    expect(await told({ 'a.csv': early, 'b.csv': late }, 'firmware')).toEqual([
      '10:00:00 B firmware 6.2.0 was - a.csv:2',
      '10:10:00..10:20:00 B firmware 6.4.1 was 6.2.0 b.csv:2',
    ]);
    // A journal said it once, whatever else it goes on to tell.
    const log = journalText('10:05:00 RO1 B firmware 6.2.0\n10:12:00 RO1 B light off');
    expect((await told({ 'a.log': log, 'b.csv': late }, 'firmware')).at(-1)).toBe(
      '10:05:00..10:20:00 B firmware 6.4.1 was 6.2.0 b.csv:2',
    );
    expect(
      await told({ 'a.csv': early, 'b.csv': late.replaceAll('6.4.1', '6.2.0') }, 'firmware'),
    ).toHaveLength(1);
  });

  test('of firmware that is said again after a restart is no change, nor is a light after a fault', async () => {
    const again = (what: string, between: string): readonly string[] => [
      `10:00:00 RO1 B ${what}`,
      `10:04:00 RO1 B ${between}`,
      `10:05:00 RO1 B ${what}`,
    ];
    expect(await one('firmware', ...again('firmware 6.4.1', 'module restart'))).toHaveLength(1);
    expect(await one('light', ...again('light steady', 'fault'))).toHaveLength(1);
  });

  test('of readiness was lost with the first of several things that took it', async () => {
    const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
    const lost = async (...lines: readonly string[]): Promise<string | undefined> =>
      (await one('partner-ready', ...begin, ...lines, '10:08:00 RO1 partner ready'))[1];
    expect(await lost('10:05:00 RO1 B module restart', '10:06:00 RO1 B module removed')).toMatch(
      /^10:05:00 pair partner-ready no/,
    );
    expect(await lost('10:05:00 RO1 B module removed', '10:06:00 RO1 B module restart')).toMatch(
      /^10:05:00 pair partner-ready no/,
    );
  });

  test('is not taken for lost by a field note, which tells the minute only', async () => {
    const files = {
      'a.log': journalText('10:00:00 RO1 B light steady\n10:08:00 RO1 B light steady'),
      'notes.txt': 'Pair RO1\n2026-03-14\n10:03 pulled standby from slot B\n',
    };
    expect(await told(files, 'light')).toHaveLength(1);
    const { timeline } = await factsOfPair(files);
    expect(
      timeline.events.filter((e) => e.signal === 'removed').map((e) => [eventLine(e), e.resolution]),
    ).toEqual([['10:03:00..10:04:00 B removed - was -', 0]]);
  });
});
