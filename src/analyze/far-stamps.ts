import { textAt } from '../changes.ts';
import type {
  Changes,
  FileFigures,
  Finding,
  ImportedFile,
  NonEmpty,
  SourceLine,
  StampYear,
  StampYears,
  StreamPoint,
} from '../vocabulary.ts';

/** A stamp with its line. */
interface Stamped extends SourceLine {
  readonly time: number;
}

/** A file as far as its stamps are looked at. */
type Stamps = Pick<FileFigures, 'stamps'> & { readonly input: Pick<FileFigures['input'], 'file'> };

/** Stamps that lie together, and the first of them. */
interface Cluster {
  count: number;
  from: number;
  to: number;
  readonly first: Stamped;
}

export const yearMs = 31_557_600_000;
/** Chosen here: no site keeps logs with a hole of so many years. */
export const farYears = 10;
const mostLines = 5;

/**
 * Stamps more than ten years from most others, as a clock gives them that was never set, or one that failed; one warning, or
 * none. Where neither side is most, all are told of. They are used as printed.
 */
export function farStamps(files: readonly Stamps[]): readonly Finding[] {
  const clusters = clustersOf(files);
  const all = clusters.reduce((sum, c) => sum + c.count, 0);
  const far = clusters.filter((c) => c.count * 2 <= all);
  const [first, ...others] = far.map((c) => c.first);
  if (clusters.length < 2 || first === undefined) return [];
  const span = spanOf(clusters.filter((c) => !far.includes(c)));
  const places = [first, ...others].slice(0, mostLines).map(sayStamp).join('; ');
  const count = far.reduce((sum, c) => sum + c.count, 0);
  const lie = count === 1 ? 'One timestamp is' : `${count} timestamps are`;
  return [
    {
      id: 'clock-step',
      severity: 'warning',
      pair: null,
      half: null,
      from: first.time,
      to: far.at(-1)?.first.time ?? first.time,
      statement: `${lie} more than ${farYears} years from all others${span}: ${places}. They were used as printed: correct the rows, or do not rely on times across them.`,
      figures: { count },
      evidence: evidenceOf(first, others),
    },
  ];
}

/** The days of the stamps that are not far; nothing where all are. */
function spanOf(near: readonly Cluster[]): string {
  const [first, last] = [near[0], near.at(-1)];
  return first === undefined || last === undefined ? '' : ` (${dayOf(first.from)} to ${dayOf(last.to)})`;
}

function dayOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}

function evidenceOf(first: Stamped, others: readonly Stamped[]): NonEmpty<SourceLine> {
  const place = ({ file, line, text }: Stamped): SourceLine => ({ file, line, text });
  return [place(first), ...others.slice(0, mostLines - 1).map(place)];
}

function sayStamp({ file, line, time }: Stamped): string {
  return `${dayOf(time)} in line ${line} of ${file}`;
}

/** Stamps parted by years without any, the earliest first. */
function clustersOf(files: readonly Stamps[]): readonly Cluster[] {
  const years = yearsOf(files);
  const clusters: Cluster[] = [];
  let before = -Infinity;
  for (const year of [...years.keys()].sort((a, b) => a - b)) {
    const found = years.get(year);
    const last = clusters.at(-1);
    if (found === undefined) continue;
    if (last !== undefined && year - before <= farYears) join(last, found);
    else clusters.push(found);
    before = year;
  }
  return clusters;
}

function join(
  cluster: { count: number; from: number; to: number },
  more: { readonly count: number; readonly from: number; readonly to: number },
): void {
  cluster.count += more.count;
  cluster.from = Math.min(cluster.from, more.from);
  cluster.to = Math.max(cluster.to, more.to);
}

/** How many changes each year of all files holds, and its first line; the end of a stream where it is alone in its year. */
function yearsOf(files: readonly Stamps[]): ReadonlyMap<number, Cluster> {
  const years = new Map<number, Cluster>();
  const clusterOf = (file: string, { count, from, to, first }: StampYear): Cluster => ({
    ...{ count, from, to },
    first: { file, ...first },
  });
  for (const { input, stamps } of files)
    for (const own of stamps.changes) {
      const known = years.get(own.year);
      if (known === undefined) years.set(own.year, clusterOf(input.file, own));
      else join(known, own);
    }
  for (const { input, stamps } of files)
    for (const own of stamps.ends) {
      const known = years.get(own.year);
      if (known === undefined) years.set(own.year, clusterOf(input.file, own));
      else known.to = Math.max(known.to, own.to);
    }
  return years;
}

/** The stamps of a file by their years. A year in which only streams end counts once, at the end that is met first. */
export function stampYears({ changes, streams }: ImportedFile): StampYears {
  const ends = yearsIn(streams.map((s) => s.last));
  return {
    changes: yearsOfChanges(changes),
    ends: ends.map((y) => ({ ...y, count: 1, from: y.first.time })),
  };
}

type YearSoFar = { -readonly [Key in keyof StampYear]: StampYear[Key] };

/** Rows become text only where they are the first of a year. */
function yearsOfChanges(changes: Changes): readonly StampYear[] {
  const years = new Map<number, YearSoFar>();
  for (const [place, time] of changes.time.entries()) {
    const year = yearOf(time);
    const known = years.get(year);
    if (known === undefined) {
      const first = { time, line: changes.line[place] ?? 0, text: textAt(changes, place) };
      years.set(year, { year, count: 1, from: time, to: time, first });
    } else join(known, { count: 1, from: time, to: time });
  }
  return [...years.values()];
}

function yearsIn(points: readonly StreamPoint[]): readonly StampYear[] {
  const years = new Map<number, YearSoFar>();
  for (const { time, line, text } of points) {
    const year = yearOf(time);
    const known = years.get(year);
    if (known === undefined)
      years.set(year, { year, count: 1, from: time, to: time, first: { time, line, text } });
    else join(known, { count: 1, from: time, to: time });
  }
  return [...years.values()];
}

function yearOf(time: number): number {
  return Math.floor(time / yearMs);
}
