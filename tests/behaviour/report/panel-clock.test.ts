import { describe, expect, test } from 'vitest';
import { clockText } from '../../../src/report/panel-clock.ts';
import { panel } from '../../support/made-panel.ts';
import { newest, swapNowWith } from '../../support/made-swap-now.ts';

describe('the clock of the panel', () => {
  test('says that the log is silent, and stands still', () => {
    const now = swapNowWith();
    const silent = { isSilent: true, at: newest + 30_000 };
    expect(panel(now, silent)[2]).toBe('No row for over 30 s: clock of ro1-poll.csv stopped at 09:19:15');
  });

  test.each([
    [119, ''],
    [3600, ', 1 h 00 min behind this computer'],
    [-3600, ', 1 h 00 min ahead of this computer'],
    [86_399, ', 24 h 00 min behind this computer'],
  ])('%d s behind this computer', (behindSeconds, said) => {
    expect(panel(swapNowWith(), { behindSeconds })[2]).toBe(`Clock of ro1-poll.csv: 09:18:45${said} (UTC)`);
  });

  test('a log of another day shows its date, and no distance', () => {
    expect(panel(swapNowWith(), { behindSeconds: 86_400 * 250 })[2]).toBe(
      'Clock of ro1-poll.csv: 14 Mar 2026 09:18:45 (UTC)',
    );
  });

  test('rows that come every five minutes are no clock that is behind', () => {
    expect(panel(swapNowWith({ habitSeconds: 300 }), { behindSeconds: 500 })[2]).toBe(
      'Clock of ro1-poll.csv: 09:18:45 (UTC)',
    );
  });

  test.each([
    [0, '00:00'],
    [-3, '00:00'],
    [59.9, '00:59'],
    [3599, '59:59'],
    [86_400, '24:00:00'],
  ])('%d s', (seconds, text) => {
    expect(clockText(seconds)).toBe(text);
  });
});
