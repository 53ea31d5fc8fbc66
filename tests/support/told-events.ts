import type { Signal } from '../../src/vocabulary.ts';
import { eventLine, factsOfPair } from './pair-facts.ts';

/** The events of one signal, each with the files and lines that tell of it. */
export async function told(
  files: Readonly<Record<string, string>>,
  signal: Signal,
): Promise<readonly string[]> {
  const { timeline } = await factsOfPair(files);
  return timeline.events
    .filter((e) => e.signal === signal)
    .map((e) => [eventLine(e), ...e.sources.map((s) => `${s.file}:${s.line}`)].join(' '));
}
