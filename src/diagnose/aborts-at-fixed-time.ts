import { uniqueLines } from '../timeline/evidence.ts';
import { type Attempt, type NonEmpty, type Point, type SourceLine, sayDuration } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { type FixedTime, fixedTimeOf } from './fixed-time.ts';

export const abortsAtFixedTime: Cause = {
  meta: {
    id: 'aborts-at-fixed-time',
    title: 'Every attempt gives up after the same time',
    kind: 'pattern',
    explains: 'A time limit that runs out, or a step of the copying that can never succeed.',
    shows: 'The times from sync start to sync failed are far more alike than chance would leave them.',
    needs: [['sync-failed'], ['sync-start']],
    next: 'Ask the maker which step or time limit ends a synchronisation after that time; have the event log and the size of the project at hand.',
  },
  weigh(trouble) {
    const aborted = trouble.attempts.filter((a) => a.abortSeconds !== null);
    const [first, ...rest] = aborted;
    if (first === undefined) return doubted([]);
    const found = fixedTimeOf(
      aborted.flatMap((a) => a.abortSeconds ?? []),
      trouble.limits,
    );
    if (found === null) return doubted([tooFew(trouble, aborted.length)]);
    const point: Point = { statement: sayTimes(found), evidence: linesOfAttempts([first, ...rest]) };
    return found.fixed ? { decibans: found.decibans, for: [point], against: [] } : doubted([point]);
  },
};

function tooFew({ evidence, limits }: Trouble, count: number): Point {
  return {
    statement: `Only ${count} aborted ${count === 1 ? 'attempt was' : 'attempts were'} logged; a pattern needs ${limits.patternCount}.`,
    evidence,
  };
}

function sayTimes({ count, medianSeconds, spreadSeconds }: FixedTime): string {
  return `${count} attempts gave up after a median of ${sayDuration(medianSeconds)}, half of them within ${sayDuration(spreadSeconds)} of it.`;
}

function linesOfAttempts([first, ...rest]: NonEmpty<Attempt>): NonEmpty<SourceLine> {
  return uniqueLines([...first.evidence, ...rest.flatMap((a) => a.evidence)]);
}
