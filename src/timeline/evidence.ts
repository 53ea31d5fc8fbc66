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
  const { coverage } = timeline;
  const first = coverage.reduce((a, b) => (b.stream.first.time < a.stream.first.time ? b : a));
  const last = coverage.reduce((a, b) => (b.stream.last.time > a.stream.last.time ? b : a));
  return uniqueLines([
    toLine({ file: first.file, ...first.stream.first }),
    toLine({ file: last.file, ...last.stream.last }),
  ]);
}

function toLine({ file, line, text }: SourceLine): SourceLine {
  return { file, line, text };
}
