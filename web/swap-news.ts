import { terminal } from '../src/report/escape.ts';
import type { SwapNow } from '../src/vocabulary.ts';
import { sayHoldPoint, sayRunning, type Wait } from './swap-clock.ts';

/** A pair at a moment, as a person who does not look at the screen must hear of it. */
export interface SwapMoment {
  readonly now: SwapNow;
  readonly wait: Wait | null;
}

/** What is announced; `isUrgent` interrupts whatever is spoken. */
export interface SwapNews {
  readonly words: string;
  readonly isUrgent: boolean;
}

/**
 * What happened from one moment of a pair to the next that must be announced: stop, a limit that passed, a wait that ended, a hold
 * point that came to be met. `null` where nothing did, and where another pair is looked at.
 */
export function swapNews(before: SwapMoment | null, after: SwapMoment): SwapNews | null {
  if (before === null || before.now.pair !== after.now.pair) return null;
  const { now, wait } = after;
  const { holdPoint } = now;
  if (holdPoint.status === 'stop' && before.now.holdPoint.status !== 'stop')
    return { words: `Stop and call for support. ${terminal(holdPoint.statement)}`, isUrgent: true };
  const isSame = before.now.awaits === now.awaits && before.now.half === now.half;
  if (isSame && wait?.isPast === true && before.wait?.isPast === false)
    return {
      words: `The limit of ${sayRunning(wait.limitSeconds)} has passed. Awaited: ${terminal(now.says)}.`,
      isUrgent: true,
    };
  const words = [
    ...(isSame ? [] : [sayEnded(before.now), sayNext(now)]),
    ...(holdPoint.status === 'met' && before.now.holdPoint.status === 'waiting'
      ? [`Hold point ${sayHoldPoint(holdPoint)}: met.`]
      : []),
  ].filter((said) => said !== '');
  return words.length === 0 ? null : { words: words.join(' '), isUrgent: false };
}

function sayEnded({ awaits, says }: SwapNow): string {
  return awaits === null ? '' : `No longer awaited: ${terminal(says)}.`;
}

function sayNext({ awaits, says }: SwapNow): string {
  return awaits === null ? terminal(says) : `Awaited now: ${terminal(says)}.`;
}
