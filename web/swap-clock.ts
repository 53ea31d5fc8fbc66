import { terminal } from '../src/report/escape.ts';
import { sayInstant } from '../src/report/words.ts';
import { type HoldPoint, type ProcedureStepId, type SwapNow, sayDuration } from '../src/vocabulary.ts';

/** The log's own clock at a moment; `stands`: at its newest row, since nobody sees whether more come. */
export interface LogClock {
  /** Milliseconds UTC. */
  readonly at: number;
  readonly state: 'runs' | 'silent' | 'stands';
}

/** How long what is awaited has been waited for, its limit, both in seconds, and whether that has passed. */
export interface Wait {
  readonly seconds: number;
  readonly limitSeconds: number;
  readonly isPast: boolean;
}

/** The wait of a pair by a clock; `null` where nothing is awaited, or without a limit. */
export function waitOf({ awaits, since, limitSeconds }: SwapNow, clock: LogClock): Wait | null {
  if (awaits === null || since === null || limitSeconds === null) return null;
  const seconds = Math.max(0, (clock.at - since.time) / 1000);
  return { seconds, limitSeconds, isPast: seconds > limitSeconds };
}

/** Seconds as a clock shows them: `4:12`, from an hour on `1:04:12`. */
export function sayRunning(seconds: number): string {
  const whole = Math.floor(seconds);
  const two = (value: number): string => String(value).padStart(2, '0');
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return hours === 0 ? `${minutes}:${two(rest)}` : `${hours}:${two(minutes)}:${two(rest)}`;
}

/** `4:12 of 5:00`; each part stays on one line. */
export function sayWait({ seconds, limitSeconds }: Wait): string {
  return `${sayRunning(seconds)} of ${sayRunning(limitSeconds)}`;
}

/** What is awaited, in a word or two: a tab has no room for more. */
const awaited: Readonly<Record<ProcedureStepId, string>> = {
  baseline: 'baseline',
  out: 'removal',
  in: 'insertion',
  identified: 'standby role',
  reflash: 'reflash',
  synchronising: 'sync',
  ready: 'ready',
  steady: 'light',
  switchover: 'switchover',
  'second-half': 'second half',
  soak: 'soak',
};

/** What the title of the tab says of a pair in work: `4:12 of 5:00 half B light - RO1`. */
export function titleOfWait(now: SwapNow, wait: Wait | null): string {
  const pair = terminal(now.pair);
  const stop = now.holdPoint.status === 'stop' ? ['stop'] : [];
  if (now.awaits === null || wait === null) return [...stop, `Swap now - ${pair}`].join(' - ');
  // The other half is what is awaited there.
  const isNamed = now.half !== null && now.awaits !== 'soak';
  const half = isNamed ? `half ${terminal(now.half ?? '')} ` : '';
  const past = wait.isPast ? ', limit passed,' : '';
  const words = `${sayWait(wait)}${past} ${half}${awaited[now.awaits]}`;
  return [...stop, `${words} - ${pair}`].join(' - ');
}

/** So far the log's clock may be from the one here before it is said, in seconds. Chosen here. */
const apartSeconds = 120;

/** Whose clock runs, what it shows, and why it does not go on; `thisMoment` by the clock here. */
export function sayClock(
  { clock, habitSeconds }: Pick<SwapNow, 'clock' | 'habitSeconds'>,
  { at, state }: LogClock,
  zone: string,
  thisMoment: number,
): readonly string[] {
  const whose = `Clock of ${terminal(clock)}: ${sayInstant(at, zone)}.`;
  if (state === 'stands')
    return [whose, 'Its files are not followed: the clock stands at the newest row that was read.'];
  const habit = habitSeconds === null ? '' : ` of ${sayDuration(habitSeconds)}`;
  if (state === 'silent')
    return [whose, `The log is silent for longer than its habit${habit}: its clock has stopped.`];
  const ahead = (at - thisMoment) / 1000;
  if (Math.abs(ahead) < apartSeconds) return [whose];
  const apart = `${sayDuration(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'}`;
  return [whose, `It is ${apart} the clock of this computer.`];
}

/** Where the hold point stands in the work: `before a switchover to half B`. */
export function sayHoldPoint({ id, half }: HoldPoint): string {
  const of = half === null ? null : terminal(half);
  switch (id) {
    case 'removal':
      return of === null ? 'before a removal' : `before half ${of} is removed`;
    case 'switchover':
      return of === null ? 'before a switchover' : `before a switchover to half ${of}`;
    case 'leaving':
      return 'before leaving the cabinet';
  }
}

/** Steps that take as long as a module needs, not a person. */
const ofModule: ReadonlySet<ProcedureStepId | null> = new Set(['synchronising', 'ready', 'steady'] as const);

/** How long what is awaited takes here; empty where that is up to a person. */
export function sayExpected({ awaits, expected }: Pick<SwapNow, 'awaits' | 'expected'>): string {
  if (expected === null) return ofModule.has(awaits) ? 'no bring-up to compare with' : '';
  const { median, p95, n } = expected;
  if (median === null) return `too few bring-ups to say (n = ${n})`;
  const last = p95 === null ? '95th percentile not known' : `95th percentile ${sayDuration(p95)}`;
  return `median ${sayDuration(median)}, ${last} (n = ${n})`;
}
