import { withTimes } from '../changes.ts';
import type { ClockOffset, ImportedFile, StreamPoint } from '../vocabulary.ts';

/**
 * The files with the clocks of those whose offset is measured and beyond its spread set to the reference's. What a poll saw gets wider by
 * what is not known of the offset: its bounds still hold.
 */
export function alignClocks(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
): readonly ImportedFile[] {
  return files.map((file) => {
    const offset = offsets.find((o) => o.file === file.input.file && o.isBeyond);
    return offset === undefined || offset.ahead === null ? file : shifted(file, -offset.ahead, offset.within);
  });
}

function shifted(file: ImportedFile, by: number, within: number): ImportedFile {
  const point = (p: StreamPoint): StreamPoint => ({ ...p, time: p.time + by });
  const { from, to } = file.input;
  return {
    ...file,
    input: { ...file.input, from: from === null ? null : from + by, to: to === null ? null : to + by },
    changes: withTimes(file.changes, (_place, { time, earliest }) => {
      const slack = earliest < time ? within : 0;
      return { time: time + by + slack, earliest: earliest + by - slack };
    }),
    streams: file.streams.map((s) => ({
      ...s,
      first: point(s.first),
      last: point(s.last),
      gaps: s.gaps.map((g) => ({ before: point(g.before), after: point(g.after) })),
      reads: s.reads.map((r) => ({ ...r, to: r.to + by })),
      notUnderstood: s.notUnderstood.map((u) => ({ ...u, from: u.from + by })),
    })),
    gauges: file.gauges.map((g) => ({ ...g, bins: g.bins.map((b) => ({ ...b, from: b.from + by })) })),
  };
}
