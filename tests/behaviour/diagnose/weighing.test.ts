import { describe, expect, test } from 'vitest';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { type CauseCase, diagnoseCase, pollFile, pollOf } from '../../support/check-cause.ts';
import { pollText } from '../../support/clean-swap.ts';

type Variant = Omit<CauseCase, 'name'>;
const diagnosed = (variant: Variant): Promise<Diagnosis> => diagnoseCase({ name: '', ...variant });

/** What is said of a cause: listed with its weight, or doubted. */
async function told(variant: Variant, id: string): Promise<readonly unknown[]> {
  const { causes, doubted } = await diagnosed(variant);
  const listed = causes.find((c) => c.id === id);
  const points =
    listed === undefined ? doubted.find((d) => d.id === id)?.against : [...listed.for, ...listed.against];
  return [listed?.decibans ?? 'doubted', ...(points ?? []).map((p) => p.statement)];
}

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
      'At the end of the log: no configuration waits to be sent.',
      'A partner was ready in spite of a pending configuration: 1 time.',
      'Attempts failed without a pending configuration: 2 times.',
      'When an attempt last failed: a configuration waits to be sent. It was so at 1 of 3 attempts that failed, and at 1 of 1 time that a partner was ready.',
    ]);
  });

  test('is counted over every time that a partner was ready for a minute', async () => {
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
      'The links of half B are crossed. It was so at 3 of 3 attempts that failed, and at 0 of 2 times that a partner was ready.',
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
    expect(statement).toContain('at 3 of 3 attempts that failed, and at 0 of 3 times');
  });

  test('without a failed attempt is weighed as it stands at the end of the log', async () => {
    const variant = {
      without: ['sync', '08:00:00'],
      plus: ['06:59:50  RO1 B  links crossed', '07:04:00  RO1 A  light off'],
    };
    expect((await told(variant, 'links-crossed'))[1]).toContain('It was so at 1 of 1 attempt that failed');
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
      'The median load of the active half A was 96 %; the limit is 90 %. It was so at 0 of 3 attempts that failed, and at 0 of 1 time that a partner was ready.',
    ]);
  });

  test('of restarts are those of the half in trouble, from 5 s before the trouble on', async () => {
    const restarts = async (...lines: readonly string[]): Promise<unknown> =>
      (await told({ plus: lines }, 'restart-loop'))[1];
    const none = 'No restart was logged in this time.';
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
    ).toEqual(['doubted', 'What is logged of firmware does not tell of the half or the times in question.']);
  });
});

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
        pollOf('RO2-A', 'free-memory', [[0, 4e6]]),
        pollOf('RO2-B', 'free-memory', [[0, 4e6]]),
      ),
    });
    expect((await told(memory(400_000), 'memory-short'))[0]).toBe('doubted');
    expect((await told(memory(399_999), 'memory-short'))[0]).toBe(11.4);
  });

  test('of a pattern is three: one or two of a kind are too few', async () => {
    const sync = ['07:01:00  RO1 B  sync start', '07:03:00  RO1 B  sync failed'];
    expect(await told({ without: ['sync'], plus: sync }, 'aborts-at-fixed-time')).toEqual([
      'doubted',
      'Only 1 aborted attempt was logged; a pattern needs 3.',
    ]);
    expect(await told({ plus: ['07:20:00  RO1 B  module restart'] }, 'restart-loop')).toEqual([
      'doubted',
      'Half B restarted once: too few for a loop.',
    ]);
    expect(await told({}, 'restart-loop')).toEqual(['doubted', 'No restart was logged in this time.']);
    const twice = ['07:20', '07:25'].flatMap((m) => [
      `${m}:00  RO1    partner absent`,
      `${m}:09  RO1    partner present`,
    ]);
    expect(await told({ plus: twice }, 'poor-seating')).toEqual([
      'doubted',
      'The second module was out of sight twice: too few to tell.',
    ]);
    const thrice = [...twice, '07:30:00  RO1    partner absent', '07:30:09  RO1    partner present'];
    expect((await told({ plus: thrice }, 'poor-seating'))[1]).toContain(
      'was out of sight 3 times in this time',
    );
  });
});
