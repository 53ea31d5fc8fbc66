import {
  type BringUp,
  happenings,
  type Instant,
  type NonEmpty,
  type SourceLine,
  type Staff,
  type StateSignal,
  type StateSpan,
  type TimelineEvent,
} from '../vocabulary.ts';
import { subtract } from './coverage.ts';
import { endLines, linesOf, linesOfAll } from './evidence.ts';
import type { PairFacts } from './facts.ts';
import { flappingSpells } from './flapping.ts';
import { identityAt } from './module-changes.ts';
import type { TimelineRules } from './rules.ts';
import { staffOf } from './staff.ts';
import { stepAt, track, valueAt } from './tracks.ts';

/** What a half holds where the log ends; `null` where it was never reported. */
export interface HalfNow {
  readonly half: string;
  readonly role: string | null;
  readonly model: string | null;
  readonly firmware: string | null;
}

/** How a pair stands where its log ends, and its staff from begin to end. */
export interface PairHealth {
  readonly pair: string;
  readonly site: string | null;
  readonly state: 'ready' | 'flapping' | 'not-ready' | 'unknown';
  /** When the state began; `null` if it was so when the log began, or is not known. */
  readonly since: Instant | null;
  /** Losses of the spell of flapping that goes on; 0 if there is none. */
  readonly losses: number;
  readonly from: number;
  /** The last instant that was read of it. */
  readonly to: number;
  readonly halves: readonly HalfNow[];
  readonly staff: Staff;
  readonly evidence: NonEmpty<SourceLine>;
  readonly bringUps: readonly BringUp[];
  /** Links and firmware of each half from begin to end. */
  readonly spans: readonly StateSpan[];
  /** What is marked on the staff, with the lines it rests on, in the order of time. */
  readonly marks: readonly Mark[];
}

/** Something that happened: a happening, a switchover, or the partner that was lost or came back. */
export interface Mark extends Instant {
  readonly half: string | null;
  readonly what: string;
  readonly evidence: NonEmpty<SourceLine>;
}

/** How a pair stands where its log ends. A spell of flapping that has not died down by then goes before readiness. */
export function healthOf(facts: PairFacts, rules: TimelineRules): PairHealth {
  const { timeline } = facts;
  const { pair, site, from, to } = timeline;
  const staff = staffOf(facts, from, to, rules);
  return {
    pair,
    site,
    from,
    to,
    ...stateOf(facts, rules),
    halves: timeline.halves.map((half) => {
      const { model, firmware } = identityAt(timeline, half, to);
      return { half, role: valueAt(track(timeline, half, 'role'), to), model, firmware };
    }),
    staff,
    bringUps: facts.bringUps,
    spans: timeline.halves.flatMap((half) =>
      rowSignals.flatMap((signal) =>
        claimed(spansOf(track(timeline, half, signal), half, signal, to), staff),
      ),
    ),
    marks: marksOf(facts),
  };
}

/** Of an empty place nothing is said: its links are down because nothing is there. */
function claimed(spans: readonly StateSpan[], { stretches }: Staff): readonly StateSpan[] {
  return spans.flatMap((span) => {
    const empty = stretches.filter((s) => s.half === span.half && s.drawn === 'absent');
    return subtract([span], empty).map((part) => ({ ...span, ...part }));
  });
}

const rowSignals = ['firmware', 'link-a', 'link-b', 'links'] as const;

function spansOf(
  steps: readonly TimelineEvent[],
  half: string,
  signal: StateSignal,
  end: number,
): readonly StateSpan[] {
  return steps.flatMap(({ time, value }, index) =>
    value === null ? [] : [{ half, signal, value, from: time, to: steps[index + 1]?.time ?? end }],
  );
}

const marked: ReadonlySet<string> = new Set(happenings.filter((h) => h !== 'switchover'));

function marksOf({ timeline, readiness, losses, switchovers }: PairFacts): readonly Mark[] {
  const kinds = new Map(losses.map((l) => [l.event, l.kind]));
  const toMark = (event: TimelineEvent, what: string): Mark => {
    const { time, earliest, half } = event;
    return { time, earliest, half, what, evidence: linesOf(event) };
  };
  const happened = timeline.events.filter((e) => marked.has(e.signal));
  const marks = [
    ...happened.map((e) =>
      toMark(e, e.signal === 'note' ? (e.value ?? 'note') : e.signal.replaceAll('-', ' ')),
    ),
    ...readiness.steps.filter((s) => !s.initial).map((s) => toMark(s, readinessWords(s.value, kinds.get(s)))),
    ...switchovers.map(({ at, toHalf, evidence }) => ({
      time: at.time,
      earliest: at.earliest,
      half: toHalf,
      what: 'switchover',
      evidence,
    })),
  ];
  return marks.sort((a, b) => a.time - b.time);
}

function readinessWords(value: string | null, kind: 'planned' | 'restart' | 'counted' | undefined): string {
  if (value === 'yes') return 'partner ready';
  if (kind === 'planned') return 'partner not ready, in planned work';
  return kind === 'restart' ? 'partner not ready, after a restart' : 'partner lost';
}

function stateOf(
  { timeline, losses, readiness }: PairFacts,
  rules: TimelineRules,
): Pick<PairHealth, 'state' | 'since' | 'losses' | 'evidence'> {
  const counted = losses.filter((l) => l.kind === 'counted').map((l) => l.event);
  const spell = flappingSpells(counted, timeline.to, rules.flapping).at(-1);
  if (spell !== undefined && spell.to === timeline.to) {
    const [first] = spell.events;
    const since = { time: first.time, earliest: first.earliest };
    return { state: 'flapping', since, losses: spell.events.length, evidence: linesOfAll(spell.events) };
  }
  const last = stepAt(readiness.steps, timeline.to);
  if (last === undefined) return { state: 'unknown', since: null, losses: 0, evidence: endLines(timeline) };
  // A value that is only restated goes on: the spell began with the first step that said so.
  const before = readiness.steps.findLastIndex((s) => s.time <= last.time && s.value !== last.value);
  const start = readiness.steps[before + 1] ?? last;
  return {
    state: last.value === 'yes' ? 'ready' : 'not-ready',
    since: start.initial ? null : { time: start.time, earliest: start.earliest },
    losses: 0,
    evidence: linesOf(start),
  };
}
