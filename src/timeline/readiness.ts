import type { PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { track } from './tracks.ts';

/** How ready the partner was over time. */
export interface Readiness {
  /** The signal it rests on: `partner-present` where readiness itself was never logged; `null` if neither was. */
  readonly signal: 'partner-ready' | 'partner-present' | null;
  readonly steps: readonly TimelineEvent[];
}

export function readinessOf(timeline: PairTimeline): Readiness {
  for (const signal of ['partner-ready', 'partner-present'] as const) {
    const steps = track(timeline, null, signal);
    if (steps.length > 0) return { signal, steps };
  }
  return { signal: null, steps: [] };
}

/** True if the step is a loss: not ready any more, or first heard of as not ready in a journal. */
export function isLoss(step: TimelineEvent): boolean {
  return step.value === 'no' && !step.initial;
}

/** The state before the log's first step: a first journal entry `no` is a loss, so it was ready until then. */
export function readyAt({ steps }: Readiness, time: number): boolean | null {
  const step = steps.findLast((s) => s.time <= time);
  if (step !== undefined) return step.value === 'yes';
  const first = steps[0];
  return first !== undefined && isLoss(first) ? true : null;
}

/**
 * How far apart the looks are at which a poll reads whether the partner is ready, in milliseconds: it may have been ready for
 * so long between two of them, unseen. 0 where a journal tells of it.
 */
export function readinessSpacing({ coverage }: PairTimeline): number {
  const telling = coverage.filter((c) => c.stream.signals.includes('partner-ready'));
  return telling.some((c) => c.stream.kind === 'entry')
    ? 0
    : telling
        .filter((c) => c.stream.kind === 'reading')
        .reduce((least, c) => Math.min(least, c.stream.spacing), Number.POSITIVE_INFINITY);
}
