import { compareText, type Signal, type TimelineEvent } from '../vocabulary.ts';

/** Within one stamp a cause comes before its effect. */
const causeFirst: readonly Signal[] = [
  'switchover-command',
  'fault',
  'supply',
  'removed',
  'reflash-start',
  'restart',
  'link-a',
  'link-b',
  'links',
  'switchover',
  'role',
  'partner-present',
  'inserted',
  'serial',
  'model',
  'reflash-end',
  'firmware',
  'configuration',
  'sync-start',
  'sync-failed',
  'partner-ready',
  'light',
  'note',
];

/** Order of a pair's events: by time, a cause before its effect, then by half, so that the order never depends on the files'. */
export function byCause(a: TimelineEvent, b: TimelineEvent): number {
  return (
    a.time - b.time ||
    causeFirst.indexOf(a.signal) - causeFirst.indexOf(b.signal) ||
    compareText(a.half ?? '', b.half ?? '') ||
    a.earliest - b.earliest ||
    compareText(a.value ?? '', b.value ?? '')
  );
}
