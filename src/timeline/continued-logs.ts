import type { Coverage, Interval } from '../vocabulary.ts';
import type { Sighting } from './sightings.ts';

/** What a file tells of one pair by entries. */
interface LogPart extends Interval {
  readonly file: string;
  /** Stamp and text of each entry, in the order of time. */
  readonly entries: readonly { readonly time: number; readonly key: string }[];
}

/**
 * The log that each journal of a pair is part of, named by its first file: what one part tells of, all of them watch. Two files are
 * of one log if they overlap and say the same where they do, or if they do not overlap and bear one name but for its numbers.
 */
export function continuedLogs(
  sightings: readonly Sighting[],
  coverage: readonly Omit<Coverage, 'log'>[],
): ReadonlyMap<string, string> {
  const parts = partsOf(sightings, coverage);
  const logs = new Map(parts.map((p) => [p.file, p.file]));
  for (const [index, part] of parts.entries()) {
    const earlier = parts.slice(0, index).find((p) => isContinued(p, part));
    if (earlier !== undefined) logs.set(part.file, logs.get(earlier.file) ?? earlier.file);
  }
  return logs;
}

function partsOf(
  sightings: readonly Sighting[],
  coverage: readonly Omit<Coverage, 'log'>[],
): readonly LogPart[] {
  const spans = new Map(coverage.flatMap((c) => (c.stream.kind === 'entry' ? [[c.file, c.span]] : [])));
  if (spans.size < 2) return [...spans].map(([file, span]) => ({ file, ...span, entries: [] }));
  const entries = new Map<string, { time: number; key: string }[]>(
    [...spans.keys()].map((file) => [file, []]),
  );
  for (const { kind, time, printed, sources } of sightings) {
    const stamp = printed?.time ?? time;
    if (kind === 'entry')
      entries.get(sources[0].file)?.push({ time: stamp, key: `${stamp}\n${sources[0].text}` });
  }
  return [...spans]
    .map(([file, span]) => ({ file, ...span, entries: entries.get(file) ?? [] }))
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** True if the later part goes on with the log of the earlier one. */
function isContinued(earlier: LogPart, later: LogPart): boolean {
  if (later.from > earlier.to) return nameOf(earlier.file) === nameOf(later.file);
  const common = { from: later.from, to: Math.min(earlier.to, later.to) };
  const [one, other] = [keysWithin(earlier, common), keysWithin(later, common)];
  const inside = ({ time }: { readonly time: number }): boolean => time > common.from && time < common.to;
  return (
    [...one.keys()].some((key) => other.has(key)) &&
    // At its very ends an export may begin or stop in the middle of a stamp.
    [...one].every(([key, entry]) => other.has(key) || !inside(entry)) &&
    [...other].every(([key, entry]) => one.has(key) || !inside(entry))
  );
}

function keysWithin(
  { entries }: LogPart,
  { from, to }: Interval,
): ReadonlyMap<string, { readonly time: number }> {
  return new Map(entries.flatMap((e) => (e.time >= from && e.time <= to ? [[e.key, e] as const] : [])));
}

/** The name of a file without numbers, signs, and what it is packed in: days and turns of one log have one. */
function nameOf(file: string): string {
  return file
    .replaceAll(/\.(?:gz|zip)\b/gi, '')
    .replaceAll(/[^\p{L}]+/gu, '')
    .toLowerCase();
}
