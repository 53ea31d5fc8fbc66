import type { ModuleChange } from '../timeline/module-changes.ts';
import { linesOf, linesOfAll } from '../timeline/readiness.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const oneHalfAtATime: Check = {
  id: 'one-half-at-a-time',
  title: 'One half at a time',
  judge(swap) {
    const [first, ...rest] = swap.changes;
    const pairs = rest.flatMap((second, index) => {
      const earlier = swap.changes[index] ?? first;
      return earlier.half === second.half ? [] : [judgeOrder(swap, earlier, second)];
    });
    const [outcome, ...others] = pairs;
    if (outcome === undefined) {
      return {
        status: 'pass',
        statement: `Only half ${first.half} was replaced.`,
        evidence: linesOfAll([
          first.removed,
          first.inserted,
          ...rest.flatMap((c) => [c.removed, c.inserted]),
        ]),
      };
    }
    return worstOf([outcome, ...others]);
  },
};

function judgeOrder({ facts }: SwapCase, first: ModuleChange, second: ModuleChange): Outcome {
  const evidence = linesOfAll([first.removed, first.inserted, second.removed]);
  const [one, two] = [first.half, second.half];
  if (first.inserted.earliest > second.removed.time) {
    return {
      status: 'fail',
      statement: `Half ${two} was removed while half ${one} was still out.`,
      evidence,
    };
  }
  if (first.inserted.time > second.removed.earliest) {
    return {
      status: 'inconclusive',
      statement: `The polls do not show whether half ${one} was back before half ${two} was removed.`,
      evidence,
    };
  }
  if (facts.readiness.signal !== 'partner-ready') {
    return {
      status: 'not-observed',
      statement: `Whether half ${one} had settled was never logged.`,
      evidence: linesOf(second.removed),
    };
  }
  const settled = facts.bringUps.flatMap((b) =>
    b.half === one && b.start.time >= first.inserted.earliest && b.settled !== null ? [b.settled] : [],
  );
  if (settled.some((ready) => ready.time <= second.removed.earliest)) {
    return {
      status: 'pass',
      statement: `Half ${two} was removed only after half ${one} had settled.`,
      evidence,
    };
  }
  const maybe = settled.some((ready) => ready.earliest <= second.removed.time);
  return maybe
    ? {
        status: 'inconclusive',
        statement: `The polls do not show whether half ${one} had settled before half ${two} was removed.`,
        evidence,
      }
    : { status: 'fail', statement: `Half ${two} was removed before half ${one} had settled.`, evidence };
}
