import type { PairTimeline } from '../vocabulary.ts';

/** The files in which a switchover command is ever logged, of whatever pair. */
export function commandFiles(timelines: readonly PairTimeline[]): ReadonlySet<string> {
  return new Set(
    timelines.flatMap(({ events }) =>
      events.flatMap((e) => (e.signal === 'switchover-command' ? e.sources.map((s) => s.file) : [])),
    ),
  );
}

/**
 * True if a source that logs commands, and names this pair, was read over all of a span: a command in it would be known.
 * Field notes log what a person thought of. Source: design.md, section 2, Observed.
 */
export function observesCommandAt(
  { coverage }: PairTimeline,
  logsCommands: ReadonlySet<string>,
  from: number,
  to: number,
): boolean {
  return coverage.some(
    ({ file, span, stream }) =>
      stream.kind === 'entry' && logsCommands.has(file) && span.from <= from && span.to >= to,
  );
}

/** True if a source that logs commands ever names this pair. */
export function observesCommands({ coverage }: PairTimeline, logsCommands: ReadonlySet<string>): boolean {
  return coverage.some(({ file, stream }) => stream.kind === 'entry' && logsCommands.has(file));
}
