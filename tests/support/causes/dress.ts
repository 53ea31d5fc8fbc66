import type { Fact, Level, Tale } from './bench.ts';
import type { Chance } from './chance.ts';

export type Files = Readonly<Record<string, string>>;

/** How a site exports: a log of what changes, polls of how things are, or both. */
export const dressings = ['logged', 'polled', 'both', 'noise', 'beside'] as const;
export type Dressing = (typeof dressings)[number];

/** The exports of some tales. `happenings`: a site that only polls still keeps a journal of what its polls cannot see. */
export function filesOf(
  tales: readonly Tale[],
  dressing: Dressing,
  chance: Chance,
  happenings: boolean,
): Files {
  const isNoisy = dressing === 'noise';
  const logged = dressing !== 'polled';
  const polled = !logged || dressing === 'both' || (isNoisy && chance.percent(40));
  const kept = logged ? 'all' : happenings ? 'happenings' : 'none';
  const decimals = polled || chance.percent(70) ? 3 : 0;
  const noise = isNoisy ? chance.whole(20, 120) : 0;
  return {
    ...(kept === 'none' ? {} : { 'events.log': logOf(tales, kept === 'all', decimals, noise, chance) }),
    ...(polled ? { 'poll.csv': pollOf(tales, chance.whole(6, dressing === 'polled' ? 10 : 25)) } : {}),
    'gauges.csv': gaugesOf(tales, chance.pick(60, 120), chance),
  };
}

function stampOf(time: number, decimals: number): string {
  const text = new Date(time).toISOString();
  return decimals === 3 ? text : `${text.slice(0, 19)}Z`;
}

function unitOf(pair: string, half: string | null): string {
  return half === null ? pair : `${pair}-${half}`;
}

const happeningWords: Readonly<Record<string, string>> = {
  removed: 'module removed',
  inserted: 'module inserted',
  restart: 'module restarted',
  fault: 'minor fault',
};

function wordsOf({ signal, value }: Fact): string | null {
  if (value === null) return happeningWords[signal] ?? signal.replaceAll('-', ' ');
  if (signal === 'partner-ready') return value === 'yes' ? 'partner ready' : 'partner not ready';
  if (signal === 'partner-present') return value === 'yes' ? 'partner present' : 'partner absent';
  // Of an empty place nothing is printed.
  if (value === '') return null;
  return `${signal.replace(/^link-/, 'link ')} ${value}`;
}

const chatter = [
  'HMI1 user of shift 2 logged on',
  'HMI2 page of trends printed',
  'GATEWAY queue of 14 entries flushed',
  'ROOM3 door contact opened',
  'HMI1 alarm horn acknowledged',
];

/** A text log, or a journal as CSV, of all pairs; what was so as it begins comes first. */
function logOf(
  tales: readonly Tale[],
  all: boolean,
  decimals: number,
  noise: number,
  chance: Chance,
): string {
  const entries = tales.flatMap(({ pair, facts }) =>
    facts.flatMap((fact) => {
      const words = all || fact.value === null ? wordsOf(fact) : null;
      return words === null ? [] : [{ time: fact.time, unit: unitOf(pair, fact.half), words }];
    }),
  );
  const [from, to] = [Math.min(...tales.map((t) => t.from)), Math.max(...tales.map((t) => t.to))];
  for (let index = 0; index < noise; index += 1) {
    const [unit = '', ...words] = chance.pick(chatter[0] ?? '', ...chatter).split(' ');
    entries.push({ time: chance.whole(from, to), unit, words: words.join(' ') });
    const { pair, halves } = tales[chance.whole(0, tales.length - 1)] ?? { pair: 'P', halves: ['A', 'B'] };
    const about = chance.pick(
      'diagnostic buffer rotated',
      'cycle statistics reset',
      'keep-alive sequence 88 seen',
    );
    entries.push({
      time: chance.whole(from, to),
      unit: unitOf(pair, halves[chance.whole(0, 1)] ?? null),
      words: about,
    });
  }
  // The last row of the log tells how far it goes.
  entries.push({ time: to, unit: 'GATEWAY', words: 'export finished' });
  entries.sort((a, b) => a.time - b.time);
  if (chance.percent(50))
    return entries.map((e) => `${stampOf(e.time, decimals)} ${e.unit} ${e.words}\n`).join('');
  return `time,unit,message\n${entries.map((e) => `${stampOf(e.time, decimals)},${e.unit},${e.words}\n`).join('')}`;
}

const pairSignals = ['partner-present', 'partner-ready', 'configuration'] as const;
const halfSignals = [
  'role',
  'light',
  'model',
  'serial',
  'firmware',
  'link-a',
  'link-b',
  'links',
  'supply',
] as const;

/** One row per poll of the pair and of each of its halves. */
function pollOf(tales: readonly Tale[], spacingSeconds: number): string {
  const rows: { time: number; text: string }[] = [];
  for (const [index, { pair, halves, from, to, facts }] of tales.entries()) {
    const state = new Map<string, string>();
    let next = 0;
    for (let time = from + 1000 + 137 * index; time <= to; time += spacingSeconds * 1000) {
      for (let fact = facts[next]; fact !== undefined && fact.time <= time; fact = facts[next]) {
        if (fact.value !== null) state.set(`${fact.half}/${fact.signal}`, fact.value);
        next += 1;
      }
      const cells = (half: string | null, signals: readonly string[]): string =>
        signals.map((s) => state.get(`${half}/${s}`) ?? '').join(',');
      const stamp = stampOf(time, 3);
      rows.push({ time, text: `${stamp},${pair},${cells(null, pairSignals)},,,,,,,,,` });
      for (const half of halves)
        rows.push({ time, text: `${stamp},${unitOf(pair, half)},,,,${cells(half, halfSignals)}` });
    }
  }
  rows.sort((a, b) => a.time - b.time);
  return `time,unit,${pairSignals.join(',')},${halfSignals.join(',')}\n${rows.map((r) => `${r.text}\n`).join('')}`;
}

/** Load and free memory of every half, with some noise. */
function gaugesOf(tales: readonly Tale[], spacingSeconds: number, chance: Chance): string {
  const rows: { time: number; text: string }[] = [];
  for (const { pair, halves, from, to, levels, facts } of tales)
    for (const half of halves) {
      const own = levels.filter((l) => l.half === half);
      const roles = facts.filter((f) => f.half === half && f.signal === 'role');
      for (let time = from; time <= to; time += spacingSeconds * 1000) {
        // Of an empty place nothing is read.
        if (roles.findLast((f) => f.time <= time)?.value === 'none') continue;
        const level = (gauge: Level['gauge']): number =>
          own.findLast((l) => l.gauge === gauge && l.time <= time)?.value ?? 0;
        const load = Math.min(100, level('load') + chance.between(-1.5, 1.5)).toFixed(1);
        const memory = Math.round(level('free-memory') * chance.between(0.95, 1.05));
        rows.push({ time, text: `${stampOf(time, 3)},${unitOf(pair, half)},${load},${memory}` });
      }
    }
  rows.sort((a, b) => a.time - b.time);
  return `time,unit,load,free-memory\n${rows.map((r) => `${r.text}\n`).join('')}`;
}
