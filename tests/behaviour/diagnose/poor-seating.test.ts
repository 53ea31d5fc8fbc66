import { expect, test } from 'vitest';
import { poorSeating } from '../../../src/diagnose/poor-seating.ts';
import { checkCause, diagnoseCase } from '../../support/check-cause.ts';

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
  // All six in the one of two hours: p = (3600 / 7170) to the power of six, 0.016; its evidence bound 1 / (-e p ln p) is 5.5, 7.4
  // decibans, and 6 before any count. The hour before ends 30 s before the loss, and none is looked at twice.
  const { causes } = await diagnoseCase({ name: '', plus: six });
  expect(causes[0]?.id).toBe(poorSeating.meta.id);
  expect(causes[0]?.decibans).toBeGreaterThan(13);
  expect(causes[0]?.decibans).toBeLessThan(14);
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
