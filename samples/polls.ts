import { seeded } from './random.ts';
import { formatStamp, type StampStyle, splitStamp } from './stamps.ts';
import { apply, type HalfName, type State, type Story } from './story.ts';
import type { Wording } from './wordings.ts';

/** How a poll looks at a story. */
export interface PollStyle {
  readonly spacingSeconds: number;
  /** Seconds from the begin of the story to the first poll. */
  readonly phaseSeconds: number;
  /** Each poll comes late by up to so many seconds; below the spacing, so that polls keep their order. */
  readonly jitterSeconds?: number;
  readonly stamp: StampStyle;
  /** Date and clock stand in two columns, `date` and `clock`. */
  readonly split?: boolean;
  readonly delimiter: string;
  readonly wording: Wording;
  /** Also reads the gauge `load` of each half, in percent, printed with this decimal mark. */
  readonly load?: '.' | ',';
  /** A place without a module is read as any other: its links as down, its light as off. Readings only. */
  readonly readsEmpty?: boolean;
  /** What jitter and load are drawn from; 1 unless said. */
  readonly seed?: number;
}

export const halfSignals = [
  'role',
  'model',
  'serial',
  'firmware',
  'light',
  'link-a',
  'link-b',
  'links',
  'supply',
] as const;
export const pairSignals = ['partner-present', 'partner-ready', 'configuration'] as const;
export const halves: readonly HalfName[] = ['A', 'B'];

/** One look at a pair: what it was at an instant. */
export interface Poll {
  readonly pair: string;
  readonly time: number;
  readonly state: State;
  /** Percent, per half; printed only where the style asks for it. */
  readonly load: Readonly<Record<HalfName, number>>;
}

/** Every poll of some pairs in the order of time. Each pair is polled from its own story's begin to its end. */
export function pollsOf(stories: Story | readonly Story[], style: PollStyle): readonly Poll[] {
  const list = 'pair' in stories ? [stories] : stories;
  const polls = list.flatMap((story, index) => [...pollsOfOne(story, style, (style.seed ?? 1) + index)]);
  return list.length === 1 ? polls : polls.sort((a, b) => a.time - b.time);
}

function* pollsOfOne(story: Story, style: PollStyle, seed: number): Generator<Poll> {
  const { spacingSeconds, phaseSeconds, jitterSeconds = 0 } = style;
  if (jitterSeconds >= spacingSeconds) throw new RangeError('The jitter must be shorter than the spacing.');
  const random = seeded(seed);
  let state = story.begin;
  let next = 0;
  for (let due = story.from + phaseSeconds * 1000; due <= story.to; due += spacingSeconds * 1000) {
    const time = due + Math.floor(random() * jitterSeconds * 1000);
    for (
      let event = story.events[next];
      event !== undefined && event.time <= time;
      event = story.events[next]
    ) {
      state = apply(state, event);
      next += 1;
    }
    yield { pair: story.pair, time, state, load: { A: 20 + 25 * random(), B: 5 + 10 * random() } };
  }
}

/** The cells of a stamp: one, or date and clock. */
export function stampCells(time: number, style: PollStyle): readonly string[] {
  return style.split === true ? splitStamp(time, style.stamp) : [formatStamp(time, style.stamp)];
}

/** The names of the cells of a stamp. */
export function stampColumns(style: PollStyle): readonly string[] {
  return style.split === true ? ['date', 'clock'] : style.wording.readingColumns.slice(0, 1);
}

/** What a poll reads of a half in a style's words, in a fixed order: parameter and value. */
export function halfReadings(
  poll: Poll,
  half: HalfName,
  style: PollStyle,
): readonly (readonly [string, string])[] {
  const { wording } = style;
  const state = poll.state[half];
  const readings = halfSignals.map((s) => [wording.parameter(s), wording.value(s, state[s])] as const);
  if (style.load === undefined) return readings;
  const load = state.role === 'none' ? '' : poll.load[half].toFixed(1).replace('.', style.load);
  return [...readings, [wording.parameter('load'), load]];
}

/** What a poll reads of the pair in a style's words, in a fixed order: parameter and value. */
export function pairReadings(
  { state }: Poll,
  { wording }: PollStyle,
): readonly (readonly [string, string])[] {
  return pairSignals.map((s) => [wording.parameter(s), wording.value(s, state.pair[s])] as const);
}
