import { uniqueLines } from '../timeline/evidence.ts';
import { type Attempt, type NonEmpty, type Point, type SourceLine, sayAbout } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble } from './cause.ts';
import { fixedTimeOf, saySpread } from './fixed-time.ts';

/**
 * Least evidence with which a good engineer would name it: three syncs whose start and failure were both logged, so alike that times
 * without a memory would be as alike once in some thousand tries, and half of them within a tenth of their median; from five on one
 * of five may have failed of something else. Common practice, no source; the chance is that of Gail and Gastwirth.
 */
export const abortsAtFixedTime: Cause = {
  meta: {
    id: 'aborts-at-fixed-time',
    title: 'Every sync fails after the same time',
    kind: 'pattern',
    explains: 'A time limit that expires, or a copying step that always fails.',
    shows: 'The times from sync start to sync failed are far more alike than chance would leave them.',
    needs: [['sync-failed'], ['sync-start']],
    next: 'Ask the maker which step or time limit ends a synchronisation after that time; have the event log and the size of the project at hand.',
  },
  weigh(trouble) {
    const [first, ...rest] = trouble.episode.failed.filter((a) => a.abort !== null);
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
