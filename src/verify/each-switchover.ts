import { endLines, linesOf } from '../timeline/evidence.ts';
import { statedRoles, track } from '../timeline/tracks.ts';
import type { Switchover, TimelineEvent } from '../vocabulary.ts';
import { type Outcome, type SwapCase, worstOf } from './check.ts';

/**
 * Judges every switchover of the swap. Without one the check passes and says so, save where one was commanded and no line states
 * a role: then it may have come.
 */
export function judgeEachSwitchover(swap: SwapCase, judge: (switchover: Switchover) => Outcome): Outcome {
  const [first, ...rest] = swap.switchovers.map(judge);
  if (first !== undefined) return worstOf([first, ...rest]);
  const [command] = commandsIn(swap);
  const { timeline } = swap.facts;
  if (command !== undefined && timeline.halves.every((half) => statedRoles(timeline, half).length === 0)) {
    const statement = 'A switchover was commanded; whether it came was not logged.';
    return { status: 'inconclusive', statement, evidence: linesOf(command) };
  }
  return {
    status: 'pass',
    statement: 'None: no switchover was logged in this swap.',
    evidence: endLines(timeline),
  };
}

/** Of a note, which tells the minute only, the end of the log may be the start of that minute. */
function commandsIn({ facts, changes, to }: SwapCase): readonly TimelineEvent[] {
  const from = changes[0].removed.earliest;
  return track(facts.timeline, null, 'switchover-command').filter((c) => c.time >= from && c.earliest <= to);
}

/** The half a switchover went to, as it follows the word; empty where no line says which. */
export function toHalfWords(toHalf: string | null): string {
  return toHalf === null ? '' : ` to half ${toHalf}`;
}
