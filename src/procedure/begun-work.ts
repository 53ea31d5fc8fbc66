import { eventWith } from '../timeline/event-with.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { standbyAt } from '../timeline/standby.ts';
import { track } from '../timeline/tracks.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import { blanksInWork } from './works.ts';

/** Work without a known swap: a half that only polls show to be gone, or one that was out already as the log began. */
export interface BegunWork {
  readonly changes: readonly ModuleChange[];
  /** What came before the first line was not observed. */
  readonly isBeforeLog: boolean;
}

const shownMs = 86_400_000;

/** The work on a pair that no swap tells of, up to an instant and not older than a day. */
export function begunWork(facts: PairFacts, at: number): BegunWork {
  const before = facts.timeline.halves
    .flatMap((half) => outAtBegin(facts, half))
    .filter(({ removed, inserted }) => at - (inserted ?? removed).time < shownMs);
  if (before.length > 0) return { changes: before, isBeforeLog: true };
  return { changes: blanksInWork(facts, at - shownMs, at), isBeforeLog: false };
}

const nothing = { model: null, serial: null, firmware: null };

/** A half whose first word is that it is out, or that a module comes in; or the standby of a pair that begins without a partner. */
function outAtBegin(facts: PairFacts, half: string): readonly ModuleChange[] {
  const { timeline } = facts;
  if (track(timeline, half, 'removed').length > 0) return [];
  const [first] = track(timeline, half, 'inserted');
  const out = firstOut(facts, half);
  const inserted = first ?? backIn(facts, half, out);
  const begin = out ?? (first?.kind === 'reading' ? undefined : first);
  if (begin === undefined) return [];
  const { from } = timeline;
  const removed = eventWith(begin, { half, signal: 'removed', value: null, time: from, earliest: from });
  return [{ half, removed, inserted: inserted ?? null, before: nothing, found: nothing }];
}

/** The first word of a half, that it is out. */
function firstOut({ timeline }: PairFacts, half: string): TimelineEvent | undefined {
  const [role] = track(timeline, half, 'role');
  if (role?.value === 'none' && !role.concluded) return role;
  const [present] = track(timeline, null, 'partner-present');
  return present?.value === 'no' && present.initial && standbyAt(timeline, timeline.to) === half
    ? present
    : undefined;
}

/** What was out as the log began and now says what it is, or which role it has, is in. */
function backIn(
  { timeline }: PairFacts,
  half: string,
  out: TimelineEvent | undefined,
): TimelineEvent | undefined {
  if (out === undefined) return undefined;
  const signs = (['serial', 'model', 'role'] as const).flatMap((signal) =>
    track(timeline, half, signal).filter(
      (s) => s.time > out.time && s.value !== null && s.value !== 'none' && !s.concluded,
    ),
  );
  const [first] = signs.sort((a, b) => a.time - b.time);
  return first === undefined ? undefined : eventWith(first, { signal: 'inserted', value: null });
}
