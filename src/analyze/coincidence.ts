import { poissonAtLeast } from '../statistics/distributions.ts';
import { total, totalWithin } from '../timeline/coverage.ts';
import { between } from '../timeline/durations.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { groupBy } from '../timeline/groups.ts';
import { countUntil, stepAt } from '../timeline/tracks.ts';
import { type Finding, type NonEmpty, sayChance, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { CoincidenceLimits, Limits } from './limits.ts';

/** What a change is called in the sentence; `half` is its half, or "a half" where changes of both are meant. */
const words: Readonly<Record<string, (half: string) => string>> = {
  'role active': (half) => `${half} became active`,
  'role none': (half) => `${half} was left without a role`,
  'link-a up': (half) => `link a of ${half} came up`,
  'link-a down': (half) => `link a of ${half} went down`,
  'link-b up': (half) => `link b of ${half} came up`,
  'link-b down': (half) => `link b of ${half} went down`,
  'links crossed': (half) => `the links of ${half} were crossed`,
  'links straight': (half) => `the links of ${half} were set straight`,
  'configuration pending': () => 'a change of the configuration was pending',
  'configuration current': () => 'the configuration was brought up to date',
  'supply fault': (half) => `the supply of ${half} failed`,
  'supply good': (half) => `the supply of ${half} came back`,
  restart: (half) => `${half} restarted`,
  'sync-start': (half) => `${half} began to synchronise`,
  'sync-failed': (half) => `${half} failed to synchronise`,
  fault: (half) => `${half} reported a fault`,
};

/** Which other changes come before the losses of the ready partner more often than chance brings them there. */
export const coincidence: Analyzer = {
  meta: {
    id: 'coincidence',
    question: 'Do other changes precede the losses more often than chance?',
    needs: ['partner-ready'],
    findings: ['coincidence'],
  },
  analyze(facts, limits) {
    const counted = facts.losses.filter((l) => l.kind === 'counted').map((l) => l.event);
    // Where the bounds of a loss are wider than the window, nothing is sure to lie within it before the loss.
    const judged = counted.filter((e) => between(e, e).high * 1000 <= limits.coincidence.windowMs);
    const kinds = [...groupBy(changesOf(facts, limits), nameOf).entries()];
    return {
      checked: judged.length,
      notObserved: counted.length - judged.length,
      findings: kinds
        .map(([kind, changes]) => compare(facts, judged, kind, changes, limits.coincidence))
        .filter((c) => isMoreThanChance(c, kinds.length, limits.coincidence))
        .sort((a, b) => a.p - b.p)
        .map((c) => toFinding(facts, judged, c, kinds.length, limits.coincidence)),
    };
  },
};

/**
 * The changes that may have brought a loss: those while the partner was ready, and had been for a moment, so that neither
 * the loss before nor the return from it explains them; no first states. Planned work begins with a loss, so what it
 * changes is left out too. Readiness, presence and light are the loss itself; identities change by work only; the standby
 * role is the other side of the active one.
 */
function changesOf({ timeline, readiness }: PairFacts, { rules }: Limits): readonly TimelineEvent[] {
  return timeline.events.filter((event) => {
    if (event.initial || words[nameOf(event)] === undefined) return false;
    const ready = stepAt(readiness.steps, event.earliest);
    if (ready === undefined) return readiness.steps[0]?.initial === false;
    return ready.value === 'yes' && (ready.initial || event.earliest - ready.time >= rules.belongsMs);
  });
}

/** Same signal and value; the text of a fault does not part it from other faults. */
function nameOf({ signal, value }: TimelineEvent): string {
  return value === null || words[signal] !== undefined ? signal : `${signal} ${value}`;
}

interface Comparison {
  readonly kind: string;
  /** Each loss that was preceded, with the last change before it. */
  readonly preceded: readonly { readonly change: TimelineEvent; readonly loss: TimelineEvent }[];
  readonly expected: number;
  readonly p: number;
}

/**
 * Counts only what is sure to precede, and lets each change cast its widest window over the observed time: both are on
 * the side of chance. Source: design.md, section 4, Coincidence.
 */
function compare(
  { timeline }: PairFacts,
  losses: readonly TimelineEvent[],
  kind: string,
  changes: readonly TimelineEvent[],
  { windowMs }: CoincidenceLimits,
): Comparison {
  const preceded = losses.flatMap((loss) => {
    const change = lastBefore(loss, changes, windowMs);
    return change === undefined ? [] : [{ change, loss }];
  });
  const windows = changes.map((c) => ({ from: c.earliest, to: c.time + c.resolution + windowMs }));
  const observed = total(timeline.observed);
  const expected =
    observed === 0 ? losses.length : (losses.length * totalWithin(timeline.observed, windows)) / observed;
  return { kind, preceded, expected, p: poissonAtLeast(preceded.length, expected) };
}

/** The last change that surely precedes a loss; what came longer before it than the window need not be looked at. */
function lastBefore(
  loss: TimelineEvent,
  changes: readonly TimelineEvent[],
  windowMs: number,
): TimelineEvent | undefined {
  const begin = countUntil(changes, loss.time - windowMs, 'before');
  const end = countUntil(changes, loss.time, 'before');
  return changes.slice(begin, end).findLast((c) => surelyPrecedes(c, loss, windowMs));
}

/** Certainly before the loss, and certainly not longer before it than the window, whatever the bounds hide. */
function surelyPrecedes(change: TimelineEvent, loss: TimelineEvent, windowMs: number): boolean {
  const before = change.time < loss.time && change.time + change.resolution <= loss.earliest;
  return before && between(change, loss).high * 1000 <= windowMs;
}

function isMoreThanChance({ preceded, p }: Comparison, kinds: number, limits: CoincidenceLimits): boolean {
  return preceded.length >= limits.leastCount && p * kinds <= limits.significance;
}

function toFinding(
  { timeline }: PairFacts,
  losses: readonly TimelineEvent[],
  { kind, preceded, expected, p }: Comparison,
  kinds: number,
  { windowMs }: CoincidenceLimits,
): Finding {
  const halves = new Set(preceded.map(({ change }) => change.half));
  const half = halves.size === 1 ? (preceded[0]?.change.half ?? null) : null;
  const what = words[kind]?.(half === null ? 'a half' : `half ${half}`) ?? kind;
  const [first, ...rest] = preceded.flatMap(({ change, loss }) => [change, loss]);
  if (first === undefined) throw new RangeError(`No loss was preceded by ${kind}.`);
  const events: NonEmpty<TimelineEvent> = [first, ...rest];
  const chance = expected < 0.01 ? 'fewer than 0.01' : String(Number(expected.toPrecision(2)));
  const tried =
    kinds === 1 ? 'the only kind of change there was' : `one of ${kinds} kinds of change compared`;
  return {
    id: 'coincidence',
    severity: 'warning',
    pair: timeline.pair,
    half,
    from: first.time,
    to: rest.at(-1)?.time ?? first.time,
    statement: `${preceded.length} of ${losses.length} losses came within ${sayDuration(windowMs / 1000)} after ${what}; by chance ${chance} would (${sayChance(p)}, ${tried}).`,
    figures: { change: kind, count: preceded.length, losses: losses.length, expected, p, kinds },
    evidence: linesOfAll(events),
  };
}
