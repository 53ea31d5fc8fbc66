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
      'The second module dropped out 4 times in this time, and 0 times in the 1.0 h before, with no removal, restart or supply fault.',
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
