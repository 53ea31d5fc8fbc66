import { type HalfName, type Story, type StoryEvent, stateAt } from '../../../samples/story.ts';
import { otherThan } from '../stories/plan.ts';
import { type SwapFacts, swapFacts, type TrueBringUp } from '../stories/swap-facts.ts';

const second = 1000;
const limits = { step: 900 * second, steady: 300 * second, day: 86_400 * second, soak: 1800 * second };

/** A story as it had gone by an instant. */
export function upTo(story: Story, time: number): Story {
  return { ...story, to: time, events: story.events.filter((e) => e.time <= time) };
}

/** What is truly waited for at an instant: a step, or `over`; before the first removal `before`. Source: design.md, section 5. */
export function trueWait(whole: Story, time: number): string {
  const story = upTo(whole, time);
  if (story.events.every((e) => e.signal !== 'removed')) return 'before';
  const next = nextWait(story);
  const isQuiet = time - lastStep(story) >= limits.step;
  if (next === null) return isQuiet ? 'over' : 'soak';
  return isQuiet && time - next.since >= next.limit ? 'over' : next.id;
}

/** What is waited for, since when and for how long at most; milliseconds. */
export interface Wait {
  readonly id: string;
  readonly since: number;
  readonly limit: number;
}

/** What a story is waiting for at its end, no matter for how long; `null`: nothing. */
export function nextWait(story: Story): Wait | null {
  const removals = story.events.filter((e) => e.signal === 'removed');
  const facts = swapFacts(story);
  const order = [...new Set(removals.toReversed().map((e) => e.half))].filter((h) => h !== null);
  const waits = order.flatMap((half, index) =>
    index > 0 && lastOf(facts, half)?.settled != null ? [] : waitOf(facts, half),
  );
  return waits[0] ?? (order.length === 0 ? null : pairWait(facts, order));
}

function lastOf({ bringUps }: SwapFacts, half: HalfName): TrueBringUp | undefined {
  return bringUps.findLast((b) => b.half === half);
}

/** The first thing that the module in a half still has to come to. */
function waitOf(facts: SwapFacts, half: HalfName): readonly Wait[] {
  const { story } = facts;
  const own = story.events.filter((e) => e.half === half);
  const removed = timeOf(own, 'removed');
  const inserted = timeOf(own, 'inserted');
  if (inserted < removed) return [{ id: 'in', since: removed, limit: limits.step }];
  const now = stateAt(story, story.to);
  if (now[half].serial === '') return [{ id: 'identified', since: inserted, limit: limits.step }];
  const identified = timeOf(own, 'serial');
  const begun = timeOf(own, 'reflash-start');
  if (begun > inserted && timeOf(own, 'reflash-end') < begun)
    return [{ id: 'reflash', since: begun, limit: limits.step }];
  const other = now[otherThan(half)].firmware;
  if (other !== '' && now[half].firmware !== other)
    return [{ id: 'reflash', since: identified, limit: limits.step }];
  const bringUp = lastOf(facts, half);
  if (bringUp === undefined) return [];
  const { start, settled, steady } = bringUp;
  if (now.pair['partner-ready'] === 'no' && settled === null)
    return [{ id: 'ready', since: start, limit: limits.step }];
  return now[half].light !== 'steady' && steady === null
    ? [{ id: 'steady', since: start, limit: limits.steady }]
    : [];
}

/** What the pair waits for once its halves are done. */
function pairWait({ story, settled }: SwapFacts, order: readonly HalfName[]): Wait | null {
  const now = stateAt(story, story.to);
  const changed = timeOf(story.events, 'partner-ready');
  if (now.pair['partner-ready'] === 'no' && settled !== null && story.to - settled < limits.soak)
    return { id: 'ready', since: changed, limit: limits.step };
  // What is ready and has not held yet is counted from its ready on.
  const since = now.pair['partner-ready'] === 'yes' ? Math.max(settled ?? 0, changed) : settled;
  if (since === null) return null;
  if (order.length === 1 && now.A.model !== now.B.model)
    return { id: 'second-half', since, limit: limits.day };
  return story.to - (settled ?? since) < limits.soak ? { id: 'soak', since, limit: limits.soak } : null;
}

const steps: ReadonlySet<string> = new Set([
  'removed',
  'inserted',
  'reflash-start',
  'reflash-end',
  'switchover',
]);

function lastStep({ events }: Story): number {
  return events.findLast((e) => steps.has(e.signal))?.time ?? Number.NEGATIVE_INFINITY;
}

function timeOf(events: readonly StoryEvent[], signal: string): number {
  return events.findLast((e) => e.signal === signal)?.time ?? Number.NEGATIVE_INFINITY;
}
