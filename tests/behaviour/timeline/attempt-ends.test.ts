import { describe, expect, test } from 'vitest';
import { attemptsOf } from '../../../src/timeline/attempts.ts';
import { referenceBands } from '../../../src/timeline/reference-bands.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { standbyAt } from '../../../src/timeline/standby.ts';
import type { Attempt } from '../../../src/vocabulary.ts';
import { at } from '../../support/clean-swap.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const end = '10:30:00 RO1 A light off';
const lost = '10:10:00 RO1 partner not ready';
const restart = '10:10:00 RO1 B module restart';

async function attempts(...lines: readonly string[]): Promise<readonly Attempt[]> {
  const { timeline, bringUps } = await factsOfPair([...begin, ...lines, end].sort());
  return attemptsOf(timeline, bringUps, defaultRules);
}
const told = ({ half, cause, outcome, watched, abort }: Attempt): string =>
  `${half} ${cause} ${outcome} ${watched.seconds}${abort === null ? '' : ` aborted after ${abort.seconds}`}`;
const ends = async (...lines: readonly string[]): Promise<readonly string[]> =>
  (await attempts(...lines)).map(told);

describe('an attempt ends', () => {
  test('with its first failed synchronisation, counted from its sync start', async () => {
    expect(await ends(restart, lost, '10:11:00 RO1 B sync start', '10:13:00 RO1 B sync failed')).toEqual([
      'B restart failed 180 aborted after 120',
    ]);
    expect(await ends(restart, lost, '10:13:00 RO1 B sync failed')).toEqual(['B restart failed 180']);
  });

  test('where another sync starts, which is another attempt; no line says that the one before failed', async () => {
    const starts = ['10:11:00 RO1 B sync start', '10:14:00 RO1 B sync start'];
    expect(await ends(restart, lost, ...starts, '10:15:30 RO1 B sync failed')).toEqual([
      'B restart superseded 240',
      'B sync failed 90 aborted after 90',
    ]);
  });

  test('with a failed sync of which only the loss before tells, or nothing', async () => {
    expect(await ends(lost, '10:13:00 RO1 B sync failed')).toEqual(['B sync failed 0']);
    expect(await ends('10:13:00 RO1 sync failed')).toEqual(['B sync failed 0']);
  });

  test('where the module is pulled: overdue once that was past its five minutes, else superseded', async () => {
    expect(await ends(restart, lost, '10:15:00 RO1 B module removed')).toEqual(['B restart superseded 300']);
    expect(await ends(restart, lost, '10:15:00.001 RO1 B module removed')).toEqual([
      'B restart overdue 300.001',
    ]);
    expect(await ends(restart, lost, '10:15:00 RO1 A module removed')).toEqual(['B restart overdue 1200']);
  });

  test('where its half becomes active or is reflashed', async () => {
    const taken = ['10:12:00 RO1 A role standby', '10:12:00 RO1 B role active'];
    expect(await ends(restart, lost, ...taken)).toEqual(['B restart superseded 120']);
    expect(await ends(restart, lost, '10:12:00 RO1 B reflash start')).toEqual(['B restart superseded 120']);
    const reflash = ['10:12:00 RO1 B reflash end', '10:14:00 RO1 partner ready'];
    expect(await ends(restart, lost, ...reflash)).toEqual([
      'B restart superseded 120',
      'B reflash ready 120',
    ]);
  });

  test('where another bring-up of its half begins: cut short before its five minutes were over', async () => {
    expect(await ends(restart, lost, '10:12:00 RO1 B module restart')).toEqual([
      'B restart superseded 120',
      'B restart overdue 1080',
    ]);
  });

  test('ready if that held for a minute, lost if not, and neither if the log ends before', async () => {
    const ready = '10:12:00 RO1 partner ready';
    expect(await ends(restart, lost, ready, '10:13:00 RO1 partner not ready')).toEqual([
      'B restart ready 120',
      'B loss overdue 1020',
    ]);
    expect(await ends(restart, lost, ready, '10:12:59.999 RO1 partner not ready')).toEqual([
      'B restart lost 120',
      'B loss overdue 1020.001',
    ]);
    expect(await ends(restart, lost, '10:29:01 RO1 partner ready')).toEqual(['B restart unfinished 1200']);
    expect(await ends(restart, lost, '10:29:00 RO1 partner ready')).toEqual(['B restart ready 1140']);
    expect(await ends(lost, ready)).toEqual(['B loss ready 120']);
    expect(await ends(lost, ready, '10:12:30 RO1 partner not ready')).toEqual([
      'B loss lost 120',
      'B loss overdue 1050',
    ]);
  });
});

describe('an attempt', () => {
  test('is none where a sync starts while the partner is ready', async () => {
    expect(await ends('10:05:00 RO1 B sync start')).toEqual([]);
  });

  test('has the module that was there to its end, and the lines of its begin and end', async () => {
    const own = [
      '10:00:00 RO1 B firmware 6.2.0',
      '10:11:00 RO1 B model Tern-4',
      '10:13:00 RO1 B serial T4-2',
    ];
    const [found] = await attempts(...own, restart, lost, '10:13:00 RO1 B sync failed');
    expect([found?.model, found?.serial, found?.firmware]).toEqual(['Tern-4', null, '6.2.0']);
    expect(found?.evidence.map((line) => line.text.slice(11, 19))).toEqual(['10:10:00', '10:13:00']);
    const inserted = [
      '10:10:00 RO1 B module inserted',
      '10:10:00 RO1 B model Tern-4',
      '10:10:00 RO1 B serial T4-2',
    ];
    const [came] = await attempts('10:05:00 RO1 B module removed', ...inserted);
    expect(came?.evidence[0].text).toContain('module inserted');
    const [open] = await attempts(restart, lost);
    expect(open?.evidence.map((line) => line.text.slice(11, 19))).toEqual(['10:10:00', '10:30:00']);
  });
});

describe('how long successful attempts stayed in a stage', () => {
  test('is told as the shortest, the middle and the longest, without those that failed', async () => {
    const found = await attempts(
      restart,
      lost,
      '10:12:00 RO1 partner ready',
      '10:15:00 RO1 B module restart',
      '10:15:00 RO1 partner not ready',
      '10:18:00 RO1 partner ready',
      '10:22:00 RO1 B module restart',
      '10:22:00 RO1 partner not ready',
      '10:23:00 RO1 B sync failed',
    );
    // `starting`, by its role, for 120 s and 180 s; ready to the next restart for 180 s and 240 s, or five minutes at most.
    expect(referenceBands(found)).toEqual([
      { stage: 'starting', count: 2, shortest: 120, median: 150, longest: 180 },
    ]);
  });
});

describe('the half that should be standby', () => {
  const standby = async (...lines: readonly string[]): Promise<string | null> =>
    standbyAt((await factsOfPair([...lines, end])).timeline, at('10:20:00'));

  test('is the one that is not active', async () => {
    expect(await standby('10:00:00 RO1 A role active', '10:00:00 RO1 B light off')).toBe('B');
    expect(await standby('10:00:00 RO1 B role active', '10:00:00 RO1 B light steady')).toBe('A');
  });

  test('without a role is the one whose light flashes or is steady, if it is only one', async () => {
    expect(await standby('10:00:00 RO1 B light flashing', '10:00:00 RO1 A light off')).toBe('B');
    expect(await standby('10:00:00 RO1 A light steady', '10:00:00 RO1 B light off')).toBe('A');
    expect(await standby('10:00:00 RO1 A light steady', '10:00:00 RO1 B light flashing')).toBeNull();
    expect(await standby('10:00:00 RO1 A light off', '10:00:00 RO1 B light off')).toBeNull();
    expect(await standby('10:00:00 RO1 B link a up')).toBeNull();
  });
});
