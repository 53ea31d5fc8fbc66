/** A short run of `npm run causes`: stories told by no rule of the diagnosis, and what comes first. */
import { expect, test } from 'vitest';
import { type Answer, answersOf, tableOf } from '../support/causes/causes.ts';
import { causeNames, noCause } from '../support/causes/stories.ts';

const seed = 20;
const each = 8;
const answers = await answersOf(each, 30, seed);
const isRight = (a: Answer): boolean => a.first === a.cause;

test('the cause that was told comes first in nineteen of twenty, and in at least six of seven of each', () => {
  console.log(tableOf(answers));
  const told = answers.filter((a) => a.cause !== null);
  expect(told.filter(isRight).length).toBeGreaterThanOrEqual(told.length * 0.95);
  for (const cause of [...causeNames, noCause]) {
    const right = told.filter((a) => a.cause === cause && isRight(a)).length;
    expect([cause, right >= (each * 6) / 7]).toEqual([cause, true]);
  }
});

test('a pair with nothing wrong is given none', () => {
  expect(answers.filter((a) => a.cause === null && a.first !== 'healthy')).toEqual([]);
});
