/** A stretch of a poll: how often it comes round, and what happens beside; of most the chance in one time that it comes round. */
export interface Stretch {
  readonly cycles: number;
  readonly spacing: number;
  /** A reading changes. */
  readonly change: number;
  /** It comes three seconds late. */
  readonly late: number;
  /** Nothing is read for a minute and a half. */
  readonly gap: number;
  /** A row stands twice. */
  readonly twice: number;
  /** From this unit on its first row always stands twice. */
  readonly twiceFrom: number;
  /** A row of the last unit alone, between two times. */
  readonly between: number;
  /** Some of the rows once more a second later. */
  readonly part: number;
  /** A gauge of the first unit, with a stamp that is ahead of the next time. */
  readonly gauge: number;
  /** A value in quotes. */
  readonly quoted: number;
  /** The clock is set back as it begins. */
  readonly setBack: number;
  /** Units with an odd number have a clock that is so much late. */
  readonly apart: number;
  /** The configuration of all is polled before the rest, and so much ahead of it by its stamps. */
  readonly ahead: number;
  /** It is polled only every so many times. */
  readonly aheadEvery: number;
  /** A row of another unit, a second before, leads it in. */
  readonly lead: boolean;
  /** In place of the light of the first unit its supply is polled. */
  readonly supply: boolean;
  /** The light of every other unit, beginning with the first, is not read. */
  readonly blank: boolean;
  /** Their partner-ready is read only every so many times. */
  readonly every: number;
  /** Each reading of a unit comes so much after the one before it. */
  readonly stagger: number;
  /** Only so many units. */
  readonly units: number;
}

/** Nothing happens. */
export const calm: Stretch = {
  cycles: 500,
  spacing: 10,
  change: 0,
  late: 0,
  gap: 0,
  twice: 0,
  twiceFrom: Number.POSITIVE_INFINITY,
  between: 0,
  part: 0,
  gauge: 0,
  quoted: 0,
  setBack: 0,
  apart: 0,
  ahead: 0,
  aheadEvery: 1,
  lead: false,
  supply: false,
  blank: false,
  every: 1,
  stagger: 0,
  units: Number.POSITIVE_INFINITY,
};

const names = ['configuration', 'partner-ready', 'light'] as const;
type Name = (typeof names)[number];
const values = {
  configuration: ['current', 'pending'],
  'partner-ready': ['yes', 'no'],
  light: ['steady', 'flashing'],
} as const;

/** A poll that comes round so often that its usual spacing is well known, stretch by stretch. */
export function longPoll(
  stamp: (seconds: number) => string,
  stretches: readonly Stretch[],
  units: number,
  random: () => number,
): string {
  const now = new Map<string, number>();
  const rows: string[] = ['time,unit,parameter,value'];
  const happens = (chance: number): boolean => random() < chance;
  const put = (at: number, unit: number, name: Name, { change, quoted, apart, supply }: Stretch): void => {
    const [shown, said] = supply && unit === 0 && name === 'light' ? ['supply', 'good'] : [name, null];
    const key = `${unit} ${name}`;
    if (happens(change / (units * names.length))) now.set(key, 1 - (now.get(key) ?? 0));
    const value = said ?? values[name][now.get(key) ?? 0] ?? '';
    const cell = happens(quoted / (units * names.length)) ? `"${value}"` : value;
    rows.push(`${stamp(at - (unit % 2) * apart)},RO${unit}-A,${shown},${cell}`);
  };
  let at = 600;
  for (const stretch of stretches) {
    const { cycles, spacing, late, gap, twice, twiceFrom, between, part, gauge, setBack, ahead } = stretch;
    const isRead = (unit: number, name: Name, cycle: number): boolean =>
      unit % 2 === 1 ||
      (name === 'light' ? !stretch.blank : name === 'configuration' || cycle % stretch.every === 0);
    const count = Math.min(units, stretch.units);
    at -= setBack;
    for (let cycle = 0; cycle < cycles; cycle += 1) {
      at += spacing + (happens(late) ? 3 : 0) + (happens(gap) ? 90 : 0);
      const hasAhead = ahead !== 0 && cycle % stretch.aheadEvery === 0;
      if (hasAhead && stretch.lead) put(at + ahead - 1, 99, 'light', stretch);
      for (let unit = 0; unit < count && hasAhead; unit += 1) put(at + ahead, unit, 'configuration', stretch);
      for (let unit = 0; unit < count; unit += 1)
        for (const [place, name] of (ahead !== 0 ? names.slice(1) : names).entries()) {
          if (!isRead(unit, name, cycle)) continue;
          put(at + place * stretch.stagger, unit, name, stretch);
          const isTwice = name === names[0] && unit >= twiceFrom;
          if (isTwice || happens(twice / (units * names.length))) put(at, unit, name, stretch);
        }
      if (happens(between)) put(at + 2, count - 1, 'light', stretch);
      if (happens(part)) for (const name of names.slice(1)) put(at + 1, 0, name, stretch);
      if (happens(gauge)) rows.push(`${stamp(at + 35)},RO0-A,load,${Math.floor(random() * 90)}`);
    }
  }
  return `${rows.join('\n')}\n`;
}
