import type { Coverage, Interval } from '../vocabulary.ts';
import { compared, type LogComparison, logName, type Telling } from './one-log.ts';
import type { Sighting } from './sightings.ts';

/** What a file tells of one pair by entries. */
interface LogPart extends Telling {
  readonly file: string;
  /** The name of the log that it may be of. */
  readonly name: string;
}

/**
 * The log that each journal of a pair is part of, named by its first file: what one part tells of, all of them watch. Two files are
 * of one log if they overlap and say the same where they do: of the pair, or of others where nothing is said of it. Where they do not
 * overlap, or nothing at all is said, they are if they bear one name but for its numbers.
 */
export function continuedLogs(
  sightings: readonly Sighting[],
  coverage: readonly Omit<Coverage, 'log'>[],
  compare: LogComparison,
): ReadonlyMap<string, string> {
  const parts = partsOf(sightings, coverage);
  const logs = new Map(parts.map((p) => [p.file, p.file]));
  for (const [index, part] of parts.entries()) {
    const earlier = parts.slice(0, index).find((p) => isContinued(p, part, compare));
    if (earlier !== undefined) logs.set(part.file, logs.get(earlier.file) ?? earlier.file);
  }
  return logs;
}

/** Entries are no readings: none is a first one. */
const noFirst: ReadonlySet<string> = new Set();

function partOf(file: string, span: Interval, told: Telling['told']): LogPart {
  return { file, name: logName(file), ...span, told, first: noFirst };
}

function partsOf(
  sightings: readonly Sighting[],
  coverage: readonly Omit<Coverage, 'log'>[],
): readonly LogPart[] {
  const spans = new Map(coverage.flatMap((c) => (c.stream.kind === 'entry' ? [[c.file, c.span]] : [])));
  if (spans.size < 2) return [...spans].map(([file, span]) => partOf(file, span, []));
  const entries = new Map<string, { time: number; key: string }[]>(
    [...spans.keys()].map((file) => [file, []]),
  );
  for (const { kind, time, printed, sources } of sightings) {
    const stamp = printed?.time ?? time;
    if (kind === 'entry')
      entries.get(sources[0].file)?.push({ time: stamp, key: `${stamp}\n${sources[0].text}` });
  }
  return [...spans]
    .map(([file, span]) => partOf(file, span, entries.get(file) ?? []))
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** True if the later part goes on with the log of the earlier one. */
function isContinued(earlier: LogPart, later: LogPart, compare: LogComparison): boolean {
  const isOneName = earlier.name === later.name;
  if (later.from > earlier.to) return isOneName;
  const own = compared(earlier, later);
  const said = own === 'silent' ? compare(earlier.file, later.file) : own;
  return said === 'same' || (said === 'silent' && isOneName);
}
