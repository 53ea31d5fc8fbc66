import type { ImportedFile, StreamPoint } from '../vocabulary.ts';
import type { ClockOffset } from './clock-offsets.ts';

/**
 * The files with the clocks of those whose offset is beyond its spread set to the reference's. What a poll saw gets wider by
 * what is not known of the offset: its bounds still hold.
 */
export function alignClocks(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
): readonly ImportedFile[] {
  return files.map((file) => {
    const offset = offsets.find((o) => o.file === file.input.file && o.isBeyond);
    return offset === undefined ? file : shifted(file, -offset.ahead, offset.within);
  });
}

/**
 * The files without what a disagreeing clock makes of pairs that the reference tells of better; what only they tell of
 * stays. Source: design.md, section 2, Merging: such sources are not merged, the better one is used.
 */
export function withoutDisagreeing(
  files: readonly ImportedFile[],
  offsets: readonly ClockOffset[],
): readonly ImportedFile[] {
  return files.map((file) => {
    const offset = offsets.find((o) => o.file === file.input.file && o.isBeyond);
    const reference = files.find((f) => f.input.file === offset?.reference);
    if (reference === undefined) return file;
    const told = new Set(reference.streams.map((s) => s.subject.pair));
    const isKept = ({ subject }: { readonly subject: { readonly pair: string } }): boolean =>
      !told.has(subject.pair);
    const streams = file.streams.map((s) =>
      isKept(s) ? s : { ...s, subject: { pair: '', half: null, role: null } },
    );
    return { ...file, streams, changes: file.changes.filter(isKept), gauges: file.gauges.filter(isKept) };
  });
}

function shifted(file: ImportedFile, by: number, within: number): ImportedFile {
  const point = (p: StreamPoint): StreamPoint => ({ ...p, time: p.time + by });
  return {
    ...file,
    changes: file.changes.map((c) => {
      const slack = c.earliest < c.time ? within : 0;
      return { ...c, time: c.time + by + slack, earliest: c.earliest + by - slack };
    }),
    streams: file.streams.map((s) => ({
      ...s,
      first: point(s.first),
      last: point(s.last),
      gaps: s.gaps.map((g) => ({ before: point(g.before), after: point(g.after) })),
    })),
    gauges: file.gauges.map((g) => ({ ...g, bins: g.bins.map((b) => ({ ...b, from: b.from + by })) })),
  };
}
