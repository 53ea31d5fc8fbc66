import type { Notice, Stream } from '../../vocabulary.ts';
import type { Unit } from './units.ts';

/**
 * A log that says another half than the one it was given for: its file is named for one half of a pair and its units all
 * name the other, or a unit names one half and the column beside it another.
 */
export function wrongHalfNotices(
  file: string,
  streams: readonly Stream[],
  units: readonly Unit[],
): readonly Notice[] {
  const halves = halvesByPair(streams);
  const given = streams.flatMap((stream) => {
    const half = halfGiven(file, stream.subject.pair);
    const own = halves.get(stream.subject.pair) ?? new Set();
    const [only] = own;
    return half === null || own.size !== 1 || only === undefined || !isOther(half, only)
      ? []
      : [
          notice(
            file,
            `Its name says half ${half.toUpperCase()} of ${stream.subject.pair}, but its unit "${stream.unit}" is half ${only}.`,
            stream.first,
          ),
        ];
  });
  const beside = units.flatMap((unit) =>
    unit.saysHalf === null || unit.first === undefined
      ? []
      : [
          notice(
            file,
            `The unit of "${unit.text}" says half ${unit.saysHalf}, but the column beside it half ${unit.subject?.half}.`,
            unit.first,
          ),
        ],
  );
  return [...given.slice(0, 1), ...beside];
}

/** Another half, named as the own one is: a number beside a letter numbers a part or a day, not a half. */
function isOther(half: string, own: string): boolean {
  return half !== own.toLowerCase() && /^\d+$/.test(half) === /^\d+$/.test(own);
}

function halvesByPair(streams: readonly Stream[]): ReadonlyMap<string, ReadonlySet<string>> {
  const halves = new Map<string, Set<string>>();
  for (const { subject } of streams) {
    const own = halves.get(subject.pair) ?? new Set();
    if (subject.half !== null) own.add(subject.half);
    halves.set(subject.pair, own);
  }
  return halves;
}

/** The half that a file name gives after the name of a pair, in lower case: `ro1-b-events.log`, `RO1 slot B.csv`. */
function halfGiven(file: string, pair: string): string | null {
  const base = (file.split(/[/\\]/).at(-1) ?? file).toLowerCase();
  const at = pair === '' ? -1 : base.indexOf(pair.toLowerCase());
  if (at < 0 || /[a-z0-9]/.test(base.charAt(at - 1))) return null;
  return (
    /^[-_ ](?:slot|half|place)?[-_ ]?([a-z]|\d)(?![a-z0-9])/.exec(base.slice(at + pair.length))?.[1] ?? null
  );
}

function notice(
  file: string,
  what: string,
  { line, text }: { readonly line: number; readonly text: string },
): Notice {
  const fix = 'Find out which half the log is from before you rely on it.';
  return { id: 'wrong-half', what, fix, count: 1, from: null, to: null, lines: [{ file, line, text }] };
}
