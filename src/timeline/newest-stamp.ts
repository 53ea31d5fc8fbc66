import type { ClockOffset, Coverage, NewestStamp, NonEmpty } from '../vocabulary.ts';

/**
 * The newest stamp that was read of a pair, and the file whose clock it is by. Where the clock of a file was measured to be off, its
 * stamps are set right and the clock of the reference runs. Of a journal any row counts, of a poll those of the pair; notes only where
 * there is nothing else.
 */
export function newestStamp(
  coverage: NonEmpty<Omit<Coverage, 'log'>>,
  offsets: readonly ClockOffset[],
): NewestStamp {
  const [first, ...rest] = coverage;
  const [log, ...logs] = coverage.filter((c) => c.stream.kind !== 'note');
  const stamps = (log === undefined ? [first, ...rest] : [log, ...logs]).map((c) => stampOf(c, offsets));
  return stamps.reduce((newest, stamp) => (stamp.time > newest.time ? stamp : newest));
}

function stampOf(
  { file, span, stream }: Omit<Coverage, 'log'>,
  offsets: readonly ClockOffset[],
): NewestStamp {
  const time = stream.kind === 'entry' ? span.to : stream.last.time;
  const offset = offsets.find((o) => o.file === file && o.isBeyond);
  return offset === undefined || offset.ahead === null
    ? { time, file }
    : { time: time - offset.ahead, file: offset.reference };
}
