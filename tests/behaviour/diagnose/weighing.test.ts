import { describe, expect, test } from 'vitest';
import { pollFile, pollOf, toldOf as told, type Variant } from '../../support/check-cause.ts';
import { pollText } from '../../support/clean-swap.ts';

describe('a state', () => {
  test('that held at failures as at readiness is only doubted, with all that was counted', async () => {
    // Pending until 07:05: at one of three failures, and at the one time of readiness. (1.5 / 4) to (1.5 / 2) is 1 to 2: 3.01
    // decibans against the 6 before any count leave 2.99, less than 3.
    const variant = {
      without: ['configuration'],
      plus: ['06:00:00  RO1    configuration pending', '07:05:00  RO1    configuration current'],
    };
    expect(await told(variant, 'configuration-pending')).toEqual([
      'doubted',
      'At the end of the log: no configuration is pending.',
      'A partner was ready in spite of a pending configuration: 1 time.',
      'Attempts failed without a pending configuration: 2 times.',
      'When an attempt last failed: a configuration is pending. This was so at 1 of 3 failed attempts and at 1 of 1 time with a ready partner.',
    ]);
  });

  test('is counted over every time with a ready partner for a minute', async () => {
    const ready = (until: string): Variant => ({
      plus: [
        '06:30:00  RO1    partner not ready',
        '06:31:00  RO1    partner ready',
        `${until}  RO1    partner not ready`,
        '06:33:00  RO1    partner ready',
        '06:59:50  RO1 B  links crossed',
      ],
    });
    // (3.5 / 4) to (0.5 / 3) is 5.25 to 1: 7.2 decibans and 9; to (0.5 / 4) 7 to 1: 8.5 and 9.
    expect((await told(ready('06:31:59.999'), 'links-crossed')).slice(0, 2)).toEqual([
      16.2,
      'The links of half B are crossed. This was so at 3 of 3 failed attempts and at 0 of 2 times with a ready partner.',
    ]);
    expect((await told(ready('06:32:00'), 'links-crossed'))[0]).toBe(17.5);
  });

  test('counts only since the trouble began', async () => {
    const early = ['06:10:00', '06:20:00'].flatMap((clock) => [
      `${clock}  RO1    partner not ready`,
      `${clock.slice(0, 4)}1:00  RO1 B  sync start`,
      `${clock.slice(0, 4)}2:00  RO1 B  sync failed`,
      `${clock.slice(0, 4)}5:00  RO1    partner ready`,
    ]);
    const [, statement] = await told({ plus: [...early, '06:59:50  RO1 B  links crossed'] }, 'links-crossed');
    expect(statement).toContain('at 3 of 3 failed attempts and at 0 of 3 times');
  });

  test('that is not known any more at the end is told as it was when an attempt last failed', async () => {
    const poll = pollText(['06:00:00', '08:00:00'], 60, [
      ['RO1-B', 'firmware', ['06:00:00', '6.4.1'], ['06:59:00', '6.2.0'], ['07:30:00', '']],
    ]);
    expect(
      await told({ without: ['RO1 B  firmware'], files: { 'poll.csv': poll } }, 'firmware-differs'),
    ).toEqual([
      15.4,
      'When an attempt last failed: half B reports firmware 6.2.0, half A 6.4.1. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ]);
  });

  test('is counted at a single failure as at many', async () => {
    const variant = {
      without: ['sync'],
      plus: [
        '07:01:00  RO1 B  sync start',
        '07:02:10  RO1 B  sync failed',
        '07:01:30  RO1    configuration pending',
        '07:05:00  RO1    configuration current',
      ],
    };
    // (1.5 / 2) to (0.5 / 2) is 3 to 1: 4.8 decibans and 6.
    expect((await told(variant, 'configuration-pending')).slice(0, 2)).toEqual([
      10.8,
      'When an attempt last failed: a configuration is pending. This was so at 1 of 1 failed attempt and at 0 of 1 time with a ready partner.',
    ]);
  });

  test('without a failed attempt is weighed as it stands at the end of the log', async () => {
    const variant = {
      without: ['sync', '08:00:00'],
      plus: ['06:59:50  RO1 B  links crossed', '07:04:00  RO1 A  light off'],
    };
    // (1.5 / 2) to (0.5 / 2) is 3 to 1: 4.8 decibans and 9. The wait after the loss is no attempt that failed.
    expect((await told(variant, 'links-crossed')).slice(0, 2)).toEqual([
      13.8,
      'The links of half B are crossed. No attempt is known to have failed; this was so at 0 of 1 time with a ready partner.',
    ]);
    // Nor is that a failed attempt where it lasts for an hour.
    const long = { without: ['sync'], plus: ['06:59:50  RO1 B  links crossed'] };
    expect((await told(long, 'links-crossed'))[1]).toContain('No attempt is known to have failed;');
    const never = { ...variant, without: [...variant.without, 'partner ready'] };
    // (1.5 / 2) to (0.5 / 1) is 1.5 to 1: 1.8 decibans and 9.
    expect((await told(never, 'links-crossed')).slice(0, 2)).toEqual([
      10.8,
      'The links of half B are crossed. No attempt is known to have failed; whether this was so with a ready partner was not logged.',
    ]);
  });
});

describe('a fault that comes and goes', () => {
  const clocks = ['06:59:56', '07:02:05', '07:09:25', '07:12:35'];
  const dips = (what: string, back: string): readonly string[] =>
    clocks.flatMap((clock) => [`${clock}  RO1 B  ${what}`, `${clock}.900  RO1 B  ${back}`]);

  test('just before each failure counts though it never was so at one', async () => {
    expect(await told({ plus: dips('link a down', 'link a up') }, 'link-down')).toEqual([
      30,
      '4 of 4 losses and failed attempts came within 30 s after link-a of half B went down; chance alone would give 0.1.',
      'No link is reported as down.',
    ]);
  });

  test('is explained neither by any other fault nor by a supply that comes back', async () => {
    const faults = clocks.map((clock) => `${clock.slice(0, 6)}${Number(clock.slice(6)) - 1}  RO1 B  fault`);
    const supply = ['06:58:00  RO1 B  supply fault', '06:59:55  RO1 B  supply good'];
    const variant = { plus: [...dips('link a down', 'link a up'), ...faults, ...supply] };
    expect((await told(variant, 'link-down'))[0]).toBe(30);
  });

  test('is not what brings failures where it comes every minute', async () => {
    // One of four came within 30 s after it, and half of all time lies within 30 s after it.
    const dipping = Array.from({ length: 59 }, (_, index) => `07:${String(index + 1).padStart(2, '0')}:50`);
    const variant = {
      plus: dipping.flatMap((clock) => [`${clock}  RO1 B  link a down`, `${clock}.900  RO1 B  link a up`]),
    };
    expect(await told(variant, 'link-down')).toEqual(['doubted', 'No link is reported as down.']);
  });

  test('is looked for before losses that count, from the first of those that follow each other within half an hour', async () => {
    const early = (ready: string): readonly string[] => [
      '06:20:00  RO1    partner not ready',
      `${ready}  RO1    partner ready`,
    ];
    const fault = '06:59:58  RO1 B  supply fault';
    expect((await told({ plus: [...early('06:30:00'), fault] }, 'supply-fault'))[1]).toContain(
      '1 of 5 losses and failed attempts',
    );
    expect((await told({ plus: [...early('06:29:59.999'), fault] }, 'supply-fault'))[1]).toContain(
      '1 of 4 losses and failed attempts',
    );
    // Without a try there is the loss alone: that it lasts to the end of the log is no failure of its own.
    expect((await told({ without: ['sync'], plus: [fault] }, 'supply-fault'))[1]).toContain(
      '1 of 1 losses and failed attempts',
    );
  });

  test('of a link is that of the restart where both come together', async () => {
    const restarts = clocks.map((clock) => `${clock}  RO1 B  module restart`);
    const variant = { plus: [...dips('link a down', 'link a up'), ...restarts] };
    expect(await told(variant, 'link-down')).toEqual(['doubted', 'No link is reported as down.']);
  });

  test('of a link is that of the supply where both come together', async () => {
    const variant = { plus: [...dips('link a down', 'link a up'), ...dips('supply fault', 'supply good')] };
    expect(await told(variant, 'link-down')).toEqual(['doubted', 'No link is reported as down.']);
    expect((await told(variant, 'supply-fault'))[0]).toBe(30);
  });
});

describe('what is looked at', () => {
  test('of a gauge is the time of each attempt', async () => {
    // 96 % from 07:15 on, when the three attempts were over.
    const load = pollFile(
      pollOf('RO1-A', 'load', [
        [0, 35],
        [75, 96],
      ]),
    );
    expect(await told({ files: load }, 'active-overloaded')).toEqual([
      'doubted',
      'Attempts failed without such a load: 3 times.',
      'The median load of the active half A was 96 %; the limit is 90 %. This was so at 0 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ]);
  });

  test('of restarts are those of the half in trouble, from 5 s before the trouble on', async () => {
    const restarts = async (...lines: readonly string[]): Promise<unknown> =>
      (await told({ plus: lines }, 'restart-loop'))[1];
    const none = 'No restart of half B was logged in this time.';
    expect(await restarts('06:59:55  RO1 B  module restart')).toBe(
      'Half B restarted once: too few for a loop.',
    );
    expect(await restarts('06:59:54.999  RO1 B  module restart')).toBe(none);
    expect(await restarts('07:20:00  RO1 A  module restart')).toBe(none);
  });

  test('of firmware is nothing where none is reported any more', async () => {
    const poll = pollText(['06:00:00', '08:00:00'], 60, [
      ['RO1-B', 'firmware', ['06:00:00', '6.4.1'], ['06:59:00', '']],
    ]);
    expect(
      await told({ without: ['RO1 B  firmware'], files: { 'poll.csv': poll } }, 'firmware-differs'),
    ).toEqual(['doubted', 'What was logged of firmware does not cover the half or the times in question.']);
  });
});
