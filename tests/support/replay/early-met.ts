import type { Story } from '../../../samples/story.ts';
import type { SwapNow } from '../../../src/vocabulary.ts';
import type { Dressed } from '../stories/dressing.ts';
import type { ToldSwap } from '../stories/swap-story.ts';
import { truthOf } from '../stories/truth.ts';
import { judgeSwap } from '../swaps/judge-swap.ts';
import { mayBeMet, type Told } from './true-conditions.ts';
import { upTo } from './true-waits.ts';

/**
 * What is said to be met before it truly holds: conditions, and checks of the hold point before leaving. `time` is when the files
 * were read; milliseconds UTC.
 */
export function earlyMet(
  told: ToldSwap,
  dressed: Dressed,
  now: SwapNow,
  by: Told,
  time: number,
): readonly string[] {
  const { id, conditions, half } = now.holdPoint;
  if (id === 'leaving') {
    if (now.swap === null) return [];
    const story = upTo(told.story, by.at);
    // The truth of the checks counts halves that are back in.
    if (isAnyOut(story)) return [];
    const cut = { ...told, story, truth: truthOf(story) };
    const bad = judgeSwap(cut, dressed, [now.swap]).filter((m) => m.kind === 'false pass');
    return bad.map(({ about }) => `leaving ${about}`);
  }
  const late = withNotes(told.story, dressed, by, { newest: now.at, time });
  // A removal that nobody tells of leaves all as it was said last.
  const isOutTold = dressed.sources.some((s) => s.kind === 'poll' || s.signals.has('removed'));
  return conditions.flatMap((c): readonly string[] => {
    if (c.status !== 'met') return [];
    if (!isOutTold && ofModule.has(c.id)) return [];
    const named = c.id === 'first-settled' ? c.half : half;
    const isTrue = mayBeMet(told.story, c.id, named, id, c.id === 'ready' ? by : late);
    return isTrue === false ? [`${id} ${c.id}`] : [];
  });
}

/**
 * A note may be newer than the newest stamp of the logs: what it tells may be so up to a lag later. What is met must hold from
 * that stamp on, itself included, since a reading tells what is so at its stamp; and where something was noted by now whose
 * minute ends later, from what came of it on. Source: design.md, section 2.
 */
function withNotes(
  { events }: Story,
  { sources }: Dressed,
  by: Told,
  { newest, time }: { readonly newest: number; readonly time: number },
): Told {
  const notes = sources.find((s) => s.kind === 'notes');
  if (notes === undefined) return by;
  const noted = events.filter((e) => {
    const end = minuteEnd(e.time);
    return noteworthy.has(e.signal) && notes.signals.has(e.signal) && end <= time && end > newest;
  });
  const roles = events.filter((e) =>
    noted.some((n) => e.signal === 'role' && e.time >= n.time && e.time <= minuteEnd(n.time)),
  );
  const from = Math.max(newest, ...[...noted, ...roles].map((e) => e.time));
  const at = by.at + by.lagMs;
  return { ...by, at, lagMs: at - from };
}

const minuteMs = 60_000;
const minuteEnd = (time: number): number => (Math.floor(time / minuteMs) + 1) * minuteMs;
const noteworthy: ReadonlySet<string> = new Set(['removed', 'inserted', 'switchover-command']);

const ofModule: ReadonlySet<string> = new Set(['identity', 'reflash', 'in', 'identified']);

function isAnyOut({ events }: Story): boolean {
  const last = (half: string): string | undefined =>
    events.findLast((e) => e.half === half && (e.signal === 'removed' || e.signal === 'inserted'))?.signal;
  return last('A') === 'removed' || last('B') === 'removed';
}
