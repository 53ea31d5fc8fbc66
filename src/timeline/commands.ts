import type { Coverage, PairTimeline } from '../vocabulary.ts';
import { unite } from './coverage.ts';

/** The files in which a switchover command is ever logged, of any pair. */
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
  timeline: PairTimeline,
  logsCommands: ReadonlySet<string>,
  from: number,
  to: number,
): boolean {
  const spans = commandLogs(timeline, logsCommands).map((c) => c.span);
  return unite(spans).some((span) => span.from <= from && span.to >= to);
}

/** True if a source that logs commands ever names this pair. */
export function observesCommands(timeline: PairTimeline, logsCommands: ReadonlySet<string>): boolean {
  return commandLogs(timeline, logsCommands).length > 0;
}

/** The journals of a pair that log commands, in all of their files. */
function commandLogs({ coverage }: PairTimeline, logsCommands: ReadonlySet<string>): readonly Coverage[] {
  const entries = coverage.filter((c) => c.stream.kind === 'entry');
  const logs = new Set(entries.flatMap((c) => (logsCommands.has(c.file) ? [c.log] : [])));
  return entries.filter((c) => logs.has(c.log));
}
