import { smallTroubles, standsOdd } from './beside.ts';
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
import { beginLate, without } from './reduce.ts';
import { type Site, siteOf, talesOf } from './site.ts';

/** Stories of no cause that a log tells: what comes first is that there is too little. */
export const noCause = 'too-little-data';

/** What one cause takes. */
interface Told {
  tell(site: Site, dressing: Dressing): void;
  /** The signals that show it; whether a site logs the others makes no difference. */
  readonly shows: readonly string[];
  /** Only a log of what happened can show it: a site that polls has one besides. */
  readonly happenings?: true;
  /** Pairs of the site, the least and the most. */
  readonly pairs?: readonly [number, number];
  /** The other pairs have a part in the story. */
  readonly isFleet?: true;
}

/** How each cause that has a name is told. The names are those of design.md, section 6. */
const told: Readonly<Record<string, Told>> = {
  'active-absent': { tell: activeAbsent, shows: ['role', 'restart'], happenings: true },
  'firmware-differs': { tell: firmwareDiffers, shows: ['firmware'] },
  'models-differ': { tell: modelsDiffer, shows: ['model'] },
  'configuration-pending': { tell: configurationPending, shows: ['configuration'] },
  'link-down': { tell: linkDown, shows: ['link-a', 'link-b'], happenings: true },
  'links-crossed': { tell: linksCrossed, shows: ['links'] },
  'restart-loop': { tell: restartLoop, shows: ['restart'], happenings: true },
  'poor-seating': {
    tell: (site, dressing) => poorSeating(site, dressing === 'polled' ? 10 : 4),
    shows: ['partner-present'],
  },
  'supply-fault': { tell: supplyFault, shows: ['supply'], happenings: true },
  'active-overloaded': { tell: activeOverloaded, shows: [] },
  'memory-short': { tell: memoryShort, shows: [], pairs: [3, 5] },
  'aborts-at-fixed-time': { tell: fixedAborts, shows: ['sync-start'], happenings: true },
  'follows-module': {
    tell: followsModule,
    shows: ['serial'],
    happenings: true,
    pairs: [2, 4],
    isFleet: true,
  },
  'follows-slot': { tell: followsSlot, shows: ['serial'], happenings: true, pairs: [4, 5], isFleet: true },
  'firmware-wide': { tell: () => undefined, shows: ['firmware'], happenings: true, isFleet: true },
  [noCause]: { tell: nothingTold, shows: [] },
};

export const causeNames: readonly string[] = Object.keys(told).filter((name) => name !== noCause);

/** A story of one cause: the pair that has it, and what its site exported. */
export interface CauseStory {
  readonly pair: string;
  readonly dressing: Dressing;
  readonly files: Files;
}

/** One story; `number` counts them, and turns the dressings. The same for the same seed. */
export function storyOf(cause: string, number: number, seed: number): CauseStory {
  const chance = chanceOf(seed * 99_991 + Object.keys(told).indexOf(cause) * 5000 + number);
  const dressing = dressings[number % dressings.length] ?? 'logged';
  const kept = told[cause];
  if (kept === undefined) throw new RangeError(`No story is told of "${cause}".`);
  const beside = dressing === 'beside' ? { beside: smallTroubles(chance.whole(1, 3)) } : {};
  if (cause === 'firmware-wide') return storyFrom(widely(chance, beside), dressing, chance, kept);
  const [least, most] = kept.pairs ?? [1, 3];
  const pairs = chance.whole(dressing === 'noise' ? Math.max(2, least) : least, most);
  const site = siteOf(chance, { pairs, ...beside });
  if (dressing === 'beside' && chance.percent(50)) standsOdd(site.act, cause);
  kept.tell(site, dressing);
  const neighbour = site.others.at(-1);
  if (dressing === 'noise' && neighbour !== undefined && kept.isFleet !== true)
    keepTroubled(neighbour, site.act.bench.now());
  return storyFrom(site, dressing, chance, kept);
}

/** From seven pairs on: four to six have the firmware, three or four do not. */
function widely(chance: Chance, beside: Partial<Parameters<typeof siteOf>[1]>): Site {
  const withIt = chance.whole(4, 6);
  const pairs = withIt + chance.whole(3, 4);
  const firmware = (place: number): string => (place < withIt ? '6.4.1' : '6.2.0');
  const site = siteOf(chance, { pairs, firmware, ...beside });
  firmwareWide(site, withIt);
  return site;
}

/** What a site may log or not, where it does not show the cause. */
const optional = [
  'light',
  'partner-present',
  'link-a',
  'link-b',
  'links',
  'supply',
  'configuration',
  'model',
  'serial',
  'firmware',
  'sync-start',
];

/** The exports of a site: some log less than others, and some logs begin just before the trouble. */
function storyFrom(site: Site, dressing: Dressing, chance: Chance, kept: Told): CauseStory {
  const { shows, happenings = false, isFleet = false } = kept;
  const isSparse = chance.percent(40);
  const silent = optional.filter((s) => isSparse && !shows.includes(s) && chance.percent(35));
  const late = !isFleet && chance.percent(25) ? site.begun.time - chance.between(65, 300) * 1000 : 0;
  const tales = talesOf(site, isFleet && site.others.length > 4).map((tale) =>
    without(beginLate(tale, late), new Set(silent)),
  );
  return { pair: site.act.bench.pair, dressing, files: filesOf(tales, dressing, chance, happenings) };
}
