import { longestWithin, spellsOf } from './history.ts';
import type { SwapFacts, TrueSwitchover } from './swap-facts.ts';
import { holding, holdingIf, undecided, type Verity, worstOf } from './verity.ts';

const minute = 60_000;
const signals = ['partner-ready'];

/** A ready partner without a break for 15 min before the first removal. */
export function baselineRedundant({ story, firstRemoval }: SwapFacts): Verity {
  const seconds = notReady(story, firstRemoval - 15 * minute, firstRemoval);
  return holdingIf(seconds === 0, signals, seconds);
}

/** A ready partner without a break for half an hour from the ready that settled. */
export function soaked({ story, settled }: SwapFacts): Verity {
  if (settled === null || settled + 30 * minute > story.to) return undecided;
  const seconds = notReady(story, settled, settled + 30 * minute);
  return holdingIf(seconds === 0, signals, seconds);
}

function notReady(story: SwapFacts['story'], from: number, to: number): number {
  return longestWithin(spellsOf(story, null, 'partner-ready'), 'no', from, to);
}

/** A ready partner, for a minute at least, before each switchover. */
export function readyBeforeSwitchover(facts: SwapFacts): Verity {
  return worstOf(facts.switchovers.map((s) => readyBefore(facts, s)));
}

/** A ready that was too short broke it by the time without one before. */
function readyBefore({ story }: SwapFacts, { at }: TrueSwitchover): Verity {
  const ready = spellsOf(story, null, 'partner-ready');
  const index = ready.findLastIndex((s) => s.from < at);
  const [before, last] = [ready[index - 1], ready[index]];
  if (last === undefined) return undecided;
  if (last.value === 'no') return holdingIf(false, signals, (at - last.from) / 1000);
  if (before === undefined || at - last.from >= minute) return holding;
  return holdingIf(false, signals, (before.to - before.from) / 1000);
}

/**
 * Losses that no work explains: each adds 1 to a figure that halves in 900 s; above 2 the standby flaps. Only who sees the
 * shortest loss sees them all.
 */
export function notFlapping({ story, replacements, to }: SwapFacts): Verity {
  const firstInsertion = Math.min(...replacements.map((r) => r.inserted));
  let [figure, last, isWork, holds] = [0, story.from, false, true];
  let shortest = Number.POSITIVE_INFINITY;
  for (const [index, { time, signal, value }] of story.events.entries()) {
    if (signal === 'removed' || signal === 'reflash-start') isWork = true;
    if (signal !== 'partner-ready') continue;
    if (value === 'no' && !isWork) {
      figure = figure * 2 ** (-(time - last) / 900_000) + 1;
      last = time;
      const back = story.events.slice(index + 1).find((e) => e.signal === 'partner-ready');
      shortest = Math.min(shortest, ((back?.time ?? story.to) - time) / 1000);
      if (figure > 2 && time >= firstInsertion && time <= to) holds = false;
    }
    if (value === 'yes') isWork = false;
  }
  return holdingIf(holds, signals, shortest);
}
