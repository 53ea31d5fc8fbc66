import { sayDuration } from '../src/vocabulary.ts';
import type { GivenFile, ReadingNews, Refusal } from './protocol.ts';

/** How far the reading of one file is. */
export interface FileProgress {
  readonly id: number;
  readonly name: string;
  /** Bytes to read, of all passes over it. */
  readonly all: number;
  /** Bytes read so far. */
  readonly read: number;
  readonly rows: number;
  /** `kept`: what it says is known. */
  readonly state: 'waiting' | 'reading' | 'read' | 'kept';
}

/** A reading that goes on. */
export interface ReadingNow {
  /** When the first file was begun, in milliseconds on the clock that `secondsLeft` is asked by; `null`: none was yet. */
  readonly begun: number | null;
  readonly files: readonly FileProgress[];
  /** The file that is read. */
  readonly current: number | null;
  readonly failures: readonly Refusal[];
  /** All were read, and what they say is put together. */
  readonly isTogether: boolean;
}

/** An archive is read once for its SHA-256 and once for its members. */
const archives = /\.(zip|gz|gzip)$/i;
/** Before that a rate says little. Chosen here. */
const rateAfterMs = 2000;

/** Nothing of these files was read yet. A YAML file is too short to count. */
export function beginReading(files: readonly GivenFile[]): ReadingNow {
  const counted = files.filter(({ name }) => !/\.ya?ml$/i.test(name));
  return {
    begun: null,
    files: counted.map(({ id, name, file: { size } }) => {
      const all = archives.test(name) ? 2 * size : size;
      return { id, name, all, read: 0, rows: 0, state: 'waiting' };
    }),
    current: null,
    failures: [],
    isTogether: false,
  };
}

/** The reading after some news of it, which came `at` that time. */
export function withNews(now: ReadingNow, news: ReadingNews, at: number): ReadingNow {
  switch (news.kind) {
    case 'kept': {
      const kept = new Set(news.files);
      return { ...now, files: now.files.map((f) => (kept.has(f.id) ? { ...f, state: 'kept' } : f)) };
    }
    case 'begin':
      return {
        ...now,
        begun: now.begun ?? at,
        current: news.file,
        files: now.files.map((f) => begun(f, news.file)),
        failures: withoutFailuresOf(now, news.file),
      };
    case 'bytes': {
      const { file, bytes, rows } = news;
      const further = (f: FileProgress): FileProgress => ({
        ...f,
        read: Math.max(f.read, Math.min(bytes, f.all)),
        rows: Math.max(f.rows, rows),
      });
      return { ...now, current: file, files: now.files.map((f) => (f.id === file ? further(f) : f)) };
    }
    case 'failure':
      return { ...now, failures: [...now.failures, news.failure] };
    case 'together':
      return { ...now, current: null, isTogether: true, files: now.files.map((f) => begun(f, null)) };
  }
}

/** What failed is tried again once the other files are known. */
function withoutFailuresOf({ files, failures }: ReadingNow, id: number): ReadingNow['failures'] {
  const name = files.find((f) => f.id === id)?.name;
  return failures.filter(({ where }) => where.replace(/:\d+$/, '') !== name);
}

/** One file is read at a time: where another begins, the last has ended. */
function begun(f: FileProgress, id: number | null): FileProgress {
  if (f.state === 'kept') return f;
  if (f.id === id) return { ...f, state: 'reading' };
  return f.state === 'reading' ? { ...f, state: 'read', read: f.all } : f;
}

/** Bytes read, of all that are to be read, and the share in whole per cent; a file that is known needs none. */
export function amountOf({ files, isTogether }: ReadingNow): {
  readonly read: number;
  readonly all: number;
  readonly percent: number;
} {
  const counted = files.filter(({ state }) => state !== 'kept');
  const all = counted.reduce((sum, f) => sum + f.all, 0);
  const read = isTogether ? all : counted.reduce((sum, f) => sum + f.read, 0);
  return { read, all, percent: all === 0 ? 100 : Math.floor((read / all) * 100) };
}

/** Seconds until all are read, at the rate so far; `null` in the first two seconds, and where nothing was read yet. */
export function secondsLeft(now: ReadingNow, at: number): number | null {
  const { read, all } = amountOf(now);
  const since = at - (now.begun ?? at);
  return since < rateAfterMs || read === 0 ? null : ((all - read) / read) * (since / 1000);
}

/** `45.2 of 300.1 MB, 15 %, about 40 s left`. */
export function sayAmount(now: ReadingNow, at: number): string {
  const { read, all, percent } = amountOf(now);
  const left = secondsLeft(now, at);
  const [unit, size] = all >= 1e6 ? ['MB', 1e6] : ['kB', 1e3];
  const figure = (bytes: number): string =>
    (bytes / size).toLocaleString('en', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  const amount = `${figure(read)} of ${figure(all)} ${unit}, ${percent} %`;
  return left === null || now.isTogether
    ? amount
    : `${amount}, about ${left <= 10 ? `${rounded(left)} s` : sayDuration(rounded(left))} left`;
}

/** Up to ten seconds each, then each fifth: a figure that jumps all the time is none. */
function rounded(seconds: number): number {
  return seconds <= 10 ? Math.max(1, Math.ceil(seconds)) : Math.ceil(seconds / 5) * 5;
}
