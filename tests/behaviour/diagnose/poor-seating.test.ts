import { describe, expect, test } from 'vitest';
import { poorSeating } from '../../../src/diagnose/poor-seating.ts';
import { checkCause, diagnoseCase, toldOf } from '../../support/check-cause.ts';

/** The minutes of drop-outs. */
const clocks: readonly string[] = ['06:59', '07:01', '07:09', '07:12'];

function dropsAt(minutes: readonly string[]): readonly string[] {
  return minutes.flatMap((at) => [`${at}:56  RO1    partner absent`, `${at}:59  RO1    partner present`]);
}

checkCause(poorSeating, {
  shows: {
    name: 'it drops out four times, twice seconds before a failure',
    plus: dropsAt(clocks),
    // The loss at 07:00:00 and the failure at 07:02:10 come 4 s and 14 s after; those at 07:09:30 and 07:12:40 before. Four
    // windows of 30 s of the 3630 s from 06:59:30 on are 0.033, four times 0.13.
    for: [
      'The second module dropped out 4 times in this time, and 0 times in the 1 h 00 min before, with no removal, restart or supply fault.',
      '2 of 4 losses and failed attempts came within 30 s after it dropped out; chance alone would give 0.1.',
    ],
    against: [],
  },
  lookAlike: {
    name: 'it drops out with each supply fault',
    plus: [
      ...dropsAt(clocks),
      ...clocks.flatMap((at) => [`${at}:55  RO1 B  supply fault`, `${at}:57  RO1 B  supply good`]),
    ],
    instead: 'supply-fault',
    against: ['The second module did not drop out in this time without a removal, restart or supply fault.'],
  },
  tooLittle: {
    name: 'it dropped out once',
    plus: dropsAt(clocks.slice(0, 1)),
    names: 'load',
    against: ['The second module dropped out once: too few to tell.'],
    lines: ['06:59:56 RO1 partner absent'],
  },
});

test('drop-outs that no failure follows weigh by how much more often they come than before', async () => {
  const six = dropsAt(['07:20', '07:25', '07:30', '07:35', '07:40', '07:45']);
  // All six in the one of two hours: p = (3600 / 7170) to the power of six, 0.016; its evidence bound 1 / (-e p ln p) is 5.6, 7.5
  // decibans, and 10 before any count, since they are more than three. The hour before ends 30 s before the loss, and none is looked at twice.
  const { causes } = await diagnoseCase({ name: '', plus: six });
  expect(causes[0]?.id).toBe(poorSeating.meta.id);
  expect(causes[0]?.decibans).toBe(17.5);
});

test('a drop-out counts from 30 s before the trouble on', async () => {
  const said = async (clock: string): Promise<string | undefined> => {
    const plus = [`${clock}  RO1    partner absent`, '06:59:40  RO1    partner present'];
    const { doubted } = await diagnoseCase({ name: '', plus });
    return doubted.find((d) => d.id === poorSeating.meta.id)?.against[0]?.statement;
  };
  expect(await said('06:59:30')).toBe('The second module dropped out once: too few to tell.');
  expect(await said('06:59:29.999')).toBe(
    'The second module did not drop out in this time without a removal, restart or supply fault.',
  );
});

test('a drop-out is explained by a restart or a supply fault, not by a supply that comes back or any other fault', async () => {
  const drop = ['07:20:00  RO1    partner absent', '07:20:09  RO1    partner present'];
  const said = async (...lines: readonly string[]): Promise<string | undefined> =>
    (await diagnoseCase({ name: '', plus: [...drop, ...lines] })).doubted.find(
      (d) => d.id === poorSeating.meta.id,
    )?.against[0]?.statement;
  const none = 'The second module did not drop out in this time without a removal, restart or supply fault.';
  const once = 'The second module dropped out once: too few to tell.';
  expect(await said('07:19:58  RO1 B  module restart')).toBe(none);
  expect(await said('07:19:58  RO1 B  supply fault')).toBe(none);
  expect(await said('07:10:00  RO1 B  supply fault', '07:19:58  RO1 B  supply good')).toBe(once);
  expect(await said('07:19:58  RO1 B  fault')).toBe(once);
});

describe('drop-outs that no failure follows', () => {
  /** One at each of some minutes, each of so many seconds. */
  const weight = async (
    minutes: readonly number[],
    seconds = 3,
    ...more: readonly string[]
  ): Promise<unknown> => {
    const back = (m: number): string =>
      `07:${m + Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
    const plus = minutes.flatMap((m) => [
      `07:${m}:00  RO1    partner absent`,
      `${back(m)}  RO1    partner present`,
    ]);
    return (await toldOf({ plus: [...plus, ...more] }, 'poor-seating'))[0];
  };

  test('are named from the fourth on where there was none before', async () => {
    // Four, or three, in the 3600 s of 7200 s: p = 1 / 16, its evidence bound 2.12 to 1, 3.3 decibans and 10; 1 / 8, 1.41 to 1, 1.5 and 6.
    expect(await weight([20, 27, 31, 44])).toBe(13.3);
    expect(await weight([20, 27, 31])).toBe(7.5);
  });

  test('are not where as many came while the partner was ready', async () => {
    const before = [11, 19, 25, 38].flatMap((m) => [
      `06:${m}:00  RO1    partner absent`,
      `06:${m}:03  RO1    partner present`,
    ]);
    expect(await weight([20, 27, 31, 44], 3, ...before)).toBe(6);
  });

  test('are moments of a minute at most: for longer somebody may have pulled the module', async () => {
    expect(await weight([20, 27, 31, 44], 60)).toBe(13.3);
    expect(await weight([20, 27, 31, 44], 61)).toBe('doubted');
  });
});

test('drop-outs count from the first loss of a trouble on, though the partner was ready for a while in between', async () => {
  const drop = (clock: string): readonly string[] => [
    `${clock}:56  RO1    partner absent`,
    `${clock}:59  RO1    partner present`,
  ];
  const said = async (ready: string): Promise<unknown> => {
    const plus = [
      ...['06:11', '06:13', '06:16', '06:19'].flatMap(drop),
      '06:12:00  RO1    partner not ready',
      `${ready}  RO1    partner ready`,
    ];
    return (await toldOf({ plus }, 'poor-seating'))[1];
  };
  // Ready again for 30 min before the loss at 07:00:00, and for a moment more.
  expect(await said('06:30:00')).toBe(
    'The second module dropped out 4 times in this time, and 0 times in the 12 min 00 s before, with no removal, restart or supply fault.',
  );
  expect(await said('06:29:59.999')).toBe(
    'The second module did not drop out in this time without a removal, restart or supply fault.',
  );
});

test('where readiness was never logged the drop-outs are the losses, and are not said to follow themselves', async () => {
  // The first came at 07:20:56.
  const told = await toldOf(
    {
      without: ['partner'],
      plus: [
        '06:00:00  RO1    partner present',
        ...dropsAt(['07:20', '07:22', '07:25', '07:29', '07:33', '07:38']),
      ],
    },
    'poor-seating',
  );
  expect(told.slice(1)).toEqual([
    'The second module dropped out 6 times in this time, and 0 times in the 1 h 21 min before, with no removal, restart or supply fault.',
  ]);
});
