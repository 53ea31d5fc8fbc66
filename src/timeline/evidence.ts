import type { NonEmpty, PairTimeline, SourceLine, TimelineEvent } from '../vocabulary.ts';

/** The lines an event rests on, as evidence. */
export function linesOf(event: TimelineEvent): NonEmpty<SourceLine> {
  const [first, ...rest] = event.sources;
  return [toLine(first), ...rest.map(toLine)];
}

/** All lines of several events, each once. */
export function linesOfAll(events: NonEmpty<TimelineEvent>): NonEmpty<SourceLine> {
  const [first, ...rest] = events;
  return uniqueLines([...linesOf(first), ...rest.flatMap(linesOf)]);
}

/** The same lines in the same order, each once. */
export function uniqueLines(lines: NonEmpty<SourceLine>): NonEmpty<SourceLine> {
  const [first, ...rest] = lines;
  const seen = new Set([`${first.file}\n${first.line}`]);
  const others = rest.filter((l) => {
    const key = `${l.file}\n${l.line}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return [first, ...others];
}

/** The first and last line of what was read of a pair: the evidence of what did not happen in it. */
export function endLines(timeline: PairTimeline): NonEmpty<SourceLine> {
  const first = [...timeline.coverage].sort((a, b) => a.stream.first.time - b.stream.first.time)[0];
  const last = [...timeline.coverage].sort((a, b) => b.stream.last.time - a.stream.last.time)[0];
  const lines = [first, last].flatMap((c, index) => {
    if (c === undefined) return [];
    const point = index === 0 ? c.stream.first : c.stream.last;
    return [{ file: c.file, line: point.line, text: point.text }];
  });
  const [begin, ...rest] = lines;
  const fallback = timeline.coverage[0];
  const { line, text } = fallback.stream.first;
  return begin === undefined ? [{ file: fallback.file, line, text }] : uniqueLines([begin, ...rest]);
}

function toLine({ file, line, text }: SourceLine): SourceLine {
  return { file, line, text };
}
