import { spellsOf, valueAt } from './history.ts';
import type { SwapFacts } from './swap-facts.ts';
import { holdingIf, type Verity, worstOf } from './verity.ts';

const halves = ['A', 'B'] as const;

/** Both links of both halves up, and in their own ports. */
export function linksRestored(facts: SwapFacts): Verity {
  return worstOf([
    ofBoth(facts, 'link-a', 'up'),
    ofBoth(facts, 'link-b', 'up'),
    ofBoth(facts, 'links', 'straight'),
  ]);
}

export function modelsMatched({ story, to }: SwapFacts): Verity {
  const [a, b] = halves.map((half) => valueAt(spellsOf(story, half, 'model'), to));
  return holdingIf(a === b && a !== '', ['model']);
}

export function configurationCurrent({ story, to }: SwapFacts): Verity {
  return holdingIf(valueAt(spellsOf(story, null, 'configuration'), to) === 'current', ['configuration']);
}

/** Supplies good, no light flashing again, and no fault of a new module that nothing settled since. */
export function nothingAtFault(facts: SwapFacts): Verity {
  const { story, replacements, settled, to } = facts;
  const isFault = ({ signal, half, time }: (typeof story.events)[number]): boolean =>
    signal === 'fault' && time <= to && replacements.some((r) => r.half === half && time >= r.inserted);
  const faults = story.events.filter(isFault).filter(({ time }) => settled === null || settled <= time);
  return worstOf([
    ofBoth(facts, 'supply', 'good'),
    holdingIf(!halves.some((half) => flashesAgain(facts, half)), ['light']),
    holdingIf(faults.length === 0, ['fault']),
  ]);
}

function ofBoth({ story, to }: SwapFacts, signal: string, value: string): Verity {
  return holdingIf(
    halves.every((half) => valueAt(spellsOf(story, half, signal), to) === value),
    [signal],
  );
}

/** A light that was never steady belongs to another check. */
function flashesAgain({ story, to }: SwapFacts, half: 'A' | 'B'): boolean {
  const light = spellsOf(story, half, 'light');
  const now = light.findLastIndex((s) => s.from <= to);
  const isStandby = valueAt(spellsOf(story, half, 'role'), to) === 'standby';
  return isStandby && light[now]?.value === 'flashing' && light[now - 1]?.value === 'steady';
}
