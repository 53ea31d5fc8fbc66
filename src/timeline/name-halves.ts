import { type Coverage, compareText, counterpart } from '../vocabulary.ts';
import type { Sighting } from './sightings.ts';

/** The slot names the logs give; where they name one, the next of its kind beside it, where none, `1` and `2`. */
export function nameHalves(sightings: readonly Sighting[], coverage: readonly Coverage[]): readonly string[] {
  const names = new Set(coverage.map((c) => c.stream.subject.half));
  for (const { subject } of sightings) names.add(subject.half);
  const named = [...names].filter((name) => name !== null).sort(compareText);
  const [only] = named;
  if (only === undefined) return ['1', '2'];
  return named.length < 2 ? [only, counterpart(only)].sort(compareText) : named;
}
