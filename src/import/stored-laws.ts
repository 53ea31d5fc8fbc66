import { eachChange } from '../changes.ts';
import {
  type Change,
  type Changes,
  type ImportedFile,
  isStateSignal,
  type Stream,
  stateValues,
} from '../vocabulary.ts';
import { isZone } from './clock/zones.ts';

/** What a file that was read always keeps, no matter what it says: a stored one that does not was not written by this program. */
export function keepsLaws(file: ImportedFile): boolean {
  const { input, changes, streams, gauges } = file;
  const { read, used, unchanged, ignored, unmatched, rejected } = input.rows;
  return (
    used + unchanged + ignored + unmatched + rejected === read &&
    isZone(input.zone) &&
    /^[0-9a-f]{64}$/.test(input.sha256) &&
    isEncoding(input.encoding) &&
    inOrder(input.from, input.to) &&
    streams.every(({ spacing }) => spacing >= 0) &&
    allKeep(changes, streams) &&
    gauges.every(({ bins }) =>
      bins.every(
        (b) => b.count > 0 && b.minimum <= b.mean + slack(b.mean) && b.mean <= b.maximum + slack(b.mean),
      ),
    )
  );
}

/** A mean is rounded. */
function slack(mean: number): number {
  return Math.abs(mean) * 1e-9;
}

function inOrder(from: number | null, to: number | null): boolean {
  return from === null || to === null ? from === to : from <= to;
}

function isEncoding(label: string): boolean {
  try {
    return new TextDecoder(label).encoding === label;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function allKeep(changes: Changes, streams: readonly Stream[]): boolean {
  for (const change of eachChange(changes)) if (!changeKeeps(change, streams)) return false;
  return true;
}

function changeKeeps(
  { subject, signal, value, earliest, time, line, count }: Change,
  streams: readonly Stream[],
): boolean {
  const values: readonly string[] | null = isStateSignal(signal) ? stateValues[signal] : null;
  return (
    subject.pair !== '' &&
    earliest <= time &&
    line > 0 &&
    count > 0 &&
    streams.length > 0 &&
    (value === null || values === null || values.includes(value))
  );
}
