import type { Source } from '../stories/dressing.ts';
import { spellsOf, valueAt, valueBefore } from '../stories/history.ts';
import type { SwapFacts } from '../stories/swap-facts.ts';

/**
 * How many of the replacements the files show to be ones: by another serial or model, or logged out and in with more than
 * two minutes between. An absent partner alone is an absence. Source: design.md, section 5.
 */
export function replacementsTold(
  { story, replacements }: SwapFacts,
  sources: readonly Source[],
): 'all' | 'some' | 'none' {
  const told = replacements.filter(({ half, removed, inserted }) => {
    const models = spellsOf(story, half, 'model');
    // The new module reports itself within some minutes; its model is the last that the half had.
    const isOther = valueBefore(models, removed) !== valueAt(models, story.to);
    const isLong = inserted - removed > 120_000;
    return (
      tells(sources, 'serial') ||
      (isOther && tells(sources, 'model')) ||
      (isLong && tells(sources, 'removed') && tells(sources, 'inserted'))
    );
  });
  return told.length === 0 ? 'none' : told.length === replacements.length ? 'all' : 'some';
}

/**
 * Whether the files show where the last bring-ups began: by a reflash that no file tells, neither by its end nor by another
 * firmware, one began that must seem to go on from the insertion, and to take too long.
 */
export function tellsStarts({ bringUps }: SwapFacts, sources: readonly Source[]): boolean {
  const hasReflash = bringUps.some((b) => b.cause === 'reflash');
  return !hasReflash || tells(sources, 'reflash-end') || tells(sources, 'firmware');
}

function tells(sources: readonly Source[], signal: string): boolean {
  return sources.some((source) => source.signals.has(signal));
}
