import { buildTimeline } from '../../src/timeline/build-timeline.ts';
import { observationFor } from '../../src/timeline/observation.ts';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { ImportedFile, Interval, PairTimeline, Signal } from '../../src/vocabulary.ts';
import { clockOf } from './pair-facts.ts';
import { readTexts } from './read-text.ts';

/** The timeline of the pair RO1 by some files, each as it was read or as `changed` makes it. */
export async function timelineOf(
  files: Readonly<Record<string, string>>,
  changed: (file: ImportedFile) => ImportedFile = (file) => file,
): Promise<PairTimeline> {
  const imported = (await readTexts(files)).files.map(changed);
  const found = buildTimeline(imported, [], defaultRules).find((t) => t.pair === 'RO1');
  if (found === undefined) throw new Error('The files do not speak of RO1.');
  return found;
}

/** What was observed of a signal of a half, or of the pair, as clocks. */
export function observedOf(timeline: PairTimeline, half: string | null, signal: Signal): readonly string[] {
  return observationFor(timeline, half, signal).observed.map(span);
}

/** What was not observed of it. */
export function unobservedOf(timeline: PairTimeline, half: string | null, signal: Signal): readonly string[] {
  return observationFor(timeline, half, signal).unobserved.map(span);
}

function span({ from, to }: Interval): string {
  return `${clockOf(from)}-${clockOf(to)}`;
}
