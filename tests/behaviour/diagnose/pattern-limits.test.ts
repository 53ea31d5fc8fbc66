import { describe, expect, test } from 'vitest';
import { pollFile, pollOf, toldOf as told, type Variant } from '../../support/check-cause.ts';

describe('a limit', () => {
  test('of the load is passed only above it', async () => {
    const load = (percent: number): Variant => ({
      files: pollFile(
        pollOf('RO1-A', 'load', [
          [0, 35],
          [60, percent],
        ]),
      ),
    });
    expect(await told(load(90), 'active-overloaded')).toEqual([
      'doubted',
      'The median load of the active half A was 90 %; the limit is 90 %.',
    ]);
    expect((await told(load(91), 'active-overloaded'))[0]).toBe(11.4);
  });

  test('of memory is passed only below a tenth of the peers, of this pair and others', async () => {
    const memory = (bytes: number): Variant => ({
      files: pollFile(
        pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
        pollOf('RO1-B', 'free-memory', [
          [0, 4e6],
          [60, bytes],
        ]),
        pollOf('RO1-B', 'load', [[0, 20]]),
        pollOf('RO2-A', 'free-memory', [[0, 4e6]]),
        pollOf('RO2-B', 'free-memory', [[0, 4e6]]),
      ),
    });
    expect((await told(memory(400_000), 'memory-short'))[0]).toBe('doubted');
    expect((await told(memory(399_999), 'memory-short'))[0]).toBe(11.4);
  });

  test('of memory is that of all peers, whichever half they are', async () => {
    const files = pollFile(
      pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
      pollOf('RO1-B', 'free-memory', [
        [0, 4e6],
        [60, 5e4],
      ]),
      pollOf('RO2-A', 'free-memory', [[0, 1e6]]),
      pollOf('RO2-B', 'free-memory', [[0, 1e6]]),
    );
    // The middle of 4,000,000 and twice 1,000,000 bytes.
    expect((await told({ files }, 'memory-short'))[1]).toContain(
      'Half B had a median of 49 KiB of free memory, its peers 977 KiB.',
    );
  });

  test('of a pattern is three: one or two of a kind are too few', async () => {
    const sync = ['07:01:00  RO1 B  sync start', '07:03:00  RO1 B  sync failed'];
    expect(await told({ without: ['sync'], plus: sync }, 'aborts-at-fixed-time')).toEqual([
      'doubted',
      'Only one failed sync was logged; a pattern needs 3.',
    ]);
    expect(await told({ plus: ['07:20:00  RO1 B  module restart'] }, 'restart-loop')).toEqual([
      'doubted',
      'Half B restarted once: too few for a loop.',
    ]);
    expect(await told({}, 'restart-loop')).toEqual([
      'doubted',
      'No restart of half B was logged in this time.',
    ]);
    const twice = ['07:20', '07:25'].flatMap((m) => [
      `${m}:00  RO1    partner absent`,
      `${m}:09  RO1    partner present`,
    ]);
    expect(await told({ plus: twice }, 'poor-seating')).toEqual([
      'doubted',
      'The second module dropped out twice: too few to tell.',
    ]);
    const thrice = [...twice, '07:30:00  RO1    partner absent', '07:30:09  RO1    partner present'];
    expect((await told({ plus: thrice }, 'poor-seating'))[1]).toContain('dropped out 3 times in this time');
  });

  test('of a rhythm is a tenth of its median: what scatters more weighs as a row without one', async () => {
    // 200, 260, 170, 240 and 210 s apart: the middle is 210, and they are 0, 10, 30, 40 and 50 s from it.
    const restarts = ['07:20:00', '07:23:20', '07:27:40', '07:30:30', '07:34:30', '07:38:00'].map(
      (clock) => `${clock}  RO1 B  module restart`,
    );
    // Five in a row: 10 decibans at three, and 1 for each more.
    expect((await told({ without: ['sync'], plus: restarts }, 'restart-loop')).slice(0, 2)).toEqual([
      12,
      'Half B restarted 6 times, with a median of 3 min 30 s between two, half of them within 30 s of it.',
    ]);
  });
});
