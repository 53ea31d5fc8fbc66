import { compareText, isStateSignal, type Signal, type TimelineEvent } from '../vocabulary.ts';

/** The place of each signal within one stamp: a cause comes before its effect. */
const place: Readonly<Record<Signal, number>> = {
  'switchover-command': 0,
  fault: 1,
  supply: 2,
  removed: 3,
  'reflash-start': 4,
  restart: 5,
  'link-a': 6,
  'link-b': 7,
  links: 8,
  switchover: 9,
  role: 10,
  'partner-present': 11,
  inserted: 12,
  serial: 13,
  model: 14,
  'reflash-end': 15,
  firmware: 16,
  configuration: 17,
  'sync-start': 18,
  'sync-failed': 19,
  'partner-ready': 20,
  light: 21,
  note: 22,
};

/**
 * Order of a pair's events: by time, a cause before its effect, then by half, so that the order never depends on the files'. The
 * steps of one state at one stamp keep the order in which they followed each other.
 */
export function byCause(a: TimelineEvent, b: TimelineEvent): number {
  const order =
    a.time - b.time || place[a.signal] - place[b.signal] || compareText(a.half ?? '', b.half ?? '');
  if (order !== 0 || isStateSignal(a.signal)) return order;
  return a.earliest - b.earliest || compareText(a.value ?? '', b.value ?? '');
}
