import { uniqueLines } from '../timeline/evidence.ts';
import { type Attempt, type NonEmpty, type Point, type SourceLine, sayAbout } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { fixedTimeOf, saySpread } from './fixed-time.ts';

export const abortsAtFixedTime: Cause = {
  meta: {
    id: 'aborts-at-fixed-time',
    title: 'Every sync fails after the same time',
    kind: 'pattern',
    explains: 'A time limit that runs out, or a step of the copying that can never succeed.',
    shows: 'The times from sync start to sync failed are far more alike than chance would leave them.',
    needs: [['sync-failed'], ['sync-start']],
    next: 'Ask the maker which step or time limit ends a synchronisation after that time; have the event log and the size of the project at hand.',
  },
  weigh(trouble) {
    const [first, ...rest] = trouble.attempts.filter((a) => a.abort !== null);
    if (first === undefined) return doubted([]);
    const aborted: NonEmpty<Attempt> = [first, ...rest];
    const found = fixedTimeOf(
      aborted.flatMap((a) => a.abort ?? []),
      trouble.limits,
    );
    if (found === null) return doubted([tooFew(trouble, aborted.length)]);
    const point: Point = {
      statement: `${found.count} syncs failed after a median of ${sayAbout(found.median)}${saySpread(found)}.`,
      evidence: linesOfAttempts(aborted),
    };
    return found.verdict === 'fixed'
      ? { decibans: found.decibans, for: [point], against: [] }
      : doubted([point]);
  },
};

function tooFew({ evidence, limits }: Trouble, count: number): Point {
  const were = count === 1 ? 'one failed sync was' : `${count} failed syncs were`;
  return { statement: `Only ${were} logged; a pattern needs ${limits.patternCount}.`, evidence };
}

function linesOfAttempts([first, ...rest]: NonEmpty<Attempt>): NonEmpty<SourceLine> {
  return uniqueLines([...first.evidence, ...rest.flatMap((a) => a.evidence)]);
}
