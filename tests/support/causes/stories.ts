import { smallTroubles } from './beside.ts';
import { type Chance, chanceOf } from './chance.ts';
import {
  activeAbsent,
  activeOverloaded,
  configurationPending,
  firmwareDiffers,
  linksCrossed,
  memoryShort,
  modelsDiffer,
} from './conditions.ts';
import { type Dressing, dressings, type Files, filesOf } from './dress.ts';
import { linkDown, poorSeating, supplyFault } from './faults.ts';
import { firmwareWide, followsModule, followsSlot } from './fleets.ts';
import { keepTroubled } from './neighbours.ts';
import { fixedAborts, nothingTold, restartLoop } from './patterns.ts';
import { type Site, siteOf, talesOf } from './site.ts';

/** Stories of no cause that a log tells: what comes first is that there is too little. */
export const noCause = 'too-little-data';

/** What one cause takes: pairs beside ours, and whether polls alone can show it. */
interface Told {
  tell(site: Site, dressing: Dressing): void;
  /** Pairs of the site, the least and the most. */
  readonly pairs?: readonly [number, number];
  /** Only a log of what happened can show it: a site that polls has one besides. */
  readonly happenings?: true;
}

/** For each cause that has a name, how it is told. The names are those of design.md, section 6. */
const told: Readonly<Record<string, Told>> = {
  'active-absent': { tell: activeAbsent, happenings: true },
  'firmware-differs': { tell: firmwareDiffers },
  'models-differ': { tell: modelsDiffer },
  'configuration-pending': { tell: configurationPending },
  'link-down': { tell: linkDown, happenings: true },
  'links-crossed': { tell: linksCrossed },
  'restart-loop': { tell: restartLoop, happenings: true },
  'poor-seating': { tell: (site, dressing) => poorSeating(site, dressing === 'polled' ? 10 : 3) },
  'supply-fault': { tell: supplyFault, happenings: true },
  'active-overloaded': { tell: activeOverloaded },
  'memory-short': { tell: memoryShort, pairs: [3, 5] },
  'aborts-at-fixed-time': { tell: fixedAborts, happenings: true },
  'follows-module': { tell: followsModule, pairs: [2, 4], happenings: true },
  'follows-slot': { tell: followsSlot, pairs: [4, 5], happenings: true },
  [noCause]: { tell: nothingTold },
};

export const causeNames: readonly string[] = [
  ...Object.keys(told).filter((name) => name !== noCause),
  'firmware-wide',
];

/** A story of one cause: the pair that has it, and what its site exported. */
export interface CauseStory {
  readonly pair: string;
  readonly dressing: Dressing;
  readonly files: Files;
}

/** One story; `number` counts them, and turns the dressings. The same for the same seed. */
export function storyOf(cause: string, number: number, seed: number): CauseStory {
  const chance = chanceOf(seed * 7919 + causeNames.indexOf(cause) * 1000 + number);
  const dressing = dressings[number % dressings.length] ?? 'logged';
  const beside = dressing === 'beside' ? smallTroubles(chance.whole(1, 3)) : undefined;
  if (cause === 'firmware-wide') return wide(chance, dressing, beside);
  const {
    tell,
    pairs: [least, most] = [1, 3],
    happenings = false,
  } = told[cause] ?? { tell: () => undefined };
  const pairs = chance.whole(dressing === 'noise' ? Math.max(2, least) : least, most);
  const site = siteOf(chance, { pairs, ...(beside === undefined ? {} : { beside }) });
  tell(site, dressing);
  const neighbour = site.others.at(-1);
  if (dressing === 'noise' && pairs > 3 - 1 && neighbour !== undefined && !isUsed(cause))
    keepTroubled(neighbour, site.act.bench.now());
  return storyFrom(site, dressing, chance, happenings, false);
}

/** The others of these have a part in the story. */
function isUsed(cause: string): boolean {
  return cause === 'follows-module' || cause === 'follows-slot';
}

/** From seven pairs on: four to six have the firmware, three or four do not. */
function wide(
  chance: Chance,
  dressing: Dressing,
  beside: ((act: Site['act']) => void) | undefined,
): CauseStory {
  const withIt = chance.whole(4, 6);
  const pairs = withIt + chance.whole(3, 4);
  const firmware = (place: number): string => (place < withIt ? '6.4.1' : '6.2.0');
  const site = siteOf(chance, { pairs, firmware, ...(beside === undefined ? {} : { beside }) });
  firmwareWide(site, withIt);
  return storyFrom(site, dressing, chance, true, true);
}

function storyFrom(
  site: Site,
  dressing: Dressing,
  chance: Chance,
  happenings: boolean,
  isCalm: boolean,
): CauseStory {
  const tales = talesOf(site, isCalm);
  return { pair: site.act.bench.pair, dressing, files: filesOf(tales, dressing, chance, happenings) };
}
