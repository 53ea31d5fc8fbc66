import { inOrder, messagesOf, readingsCsv, textLog } from '../../samples/exports.ts';
import { type Random, seeded } from '../../samples/random.ts';
import { formatStamp, type StampStyle } from '../../samples/stamps.ts';
import { atRest, type HalfName, type Module, type Story, type Teller, tell } from '../../samples/story.ts';
import { plain } from '../../samples/wordings.ts';

/** A pair that is as it should be and one that is not, with the exports of their site. */

export type Files = Readonly<Record<string, string>>;

/** Load in percent and free memory in KiB of each half of a pair, over time. */
type GaugeOf = (pair: string, half: HalfName, time: number) => { load: number; memory: number };

interface Told {
  readonly stories: readonly Story[];
  readonly gauge?: GaugeOf;
  readonly polled?: boolean;
}

const stamp: StampStyle = { form: 'iso-offset', zone: 'UTC', decimals: 3 };
const start = Date.UTC(2026, 3, 9, 6, 0, 0);

/**
 * The exports of some stories: a poll of load and memory, and one text log of all pairs; or, `polled`, a log of what
 * happened alone, and a poll every ten seconds of how things were.
 */
export function filesOf({ stories, gauge = ordinary, polled = false }: Told): Files {
  const happened = (story: Story): Story =>
    polled ? { ...story, events: story.events.filter((e) => e.value === null) } : story;
  const messages = inOrder(stories.flatMap((story) => messagesOf(happened(story), plain)));
  const rows = stories.flatMap((story) =>
    gaugeTimes(story).flatMap((time) =>
      (['A', 'B'] as const).flatMap((half) => {
        const { load, memory } = gauge(story.pair, half, time);
        const at = `${formatStamp(time, stamp)},${story.pair}-${half}`;
        return [`${at},load,${load}`, `${at},free-memory,${memory * 1024}`];
      }),
    ),
  );
  const poll = { spacingSeconds: 10, phaseSeconds: 3, stamp, delimiter: ',', wording: plain };
  return {
    'site.log': textLog(messages, stamp),
    ...(polled ? { 'poll.csv': readingsCsv(stories, poll) } : {}),
    'gauges.csv': `time,unit,parameter,value\n${rows.join('\n')}\n`,
  };
}

function gaugeTimes({ from, to }: Story): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / 60_000) }, (_, index) => from + index * 60_000);
}

const ordinary: GaugeOf = () => ({ load: 35, memory: 4000 });

function moduleOf(serial: string, firmware = '6.4.1', model = 'Tern-4'): Module {
  return { model, serial, firmware };
}

/** Tools of one story: a teller and chance. */
interface Tools {
  readonly teller: Teller;
  readonly random: Random;
  between(low: number, high: number): number;
  /** Waits for a time of the given mean that has no memory. */
  chance(meanSeconds: number): number;
}

function toolsOf(pair: string, seed: number, firmware = '6.4.1'): Tools {
  const random = seeded(seed);
  const begin = atRest(moduleOf(`${pair}-1`, firmware), moduleOf(`${pair}-2`, firmware));
  return {
    teller: tell(pair, start, begin),
    random,
    between: (low, high) => low + (high - low) * random(),
    chance: (mean) => 3 - mean * Math.log(1 - random()),
  };
}

/** The standby restarts and is ready again, as it should. */
function goodRestart(tools: Tools, half: HalfName = 'B'): void {
  const { teller, between } = tools;
  teller.wait(between(600, 1500));
  teller.happen(half, 'restart');
  lose({ teller }, half);
  teller.synchronise(half, between(110, 150), between(200, 270));
  teller.wait(between(300, 700));
  distract(tools);
  teller.wait(between(300, 700));
}

function lose({ teller }: Pick<Tools, 'teller'>, half: HalfName = 'B'): void {
  teller.set(null, 'partner-ready', 'no');
  teller.set(half, 'light', 'flashing');
}

/** Attempts that give up by themselves after times without a pattern. */
function giveUp(tools: Tools, times: number, half: HalfName = 'B'): void {
  const { teller, between, chance } = tools;
  for (let index = 0; index < times; index += 1) {
    teller.wait(between(40, 300));
    distract(tools);
    teller.happen(half, 'sync-start');
    teller.wait(chance(120));
    teller.happen(half, 'sync-failed');
  }
  teller.wait(between(100, 400));
}

/** Now and then something that has nothing to do with the trouble: a link, a supply or a configuration for a moment. */
function distract({ teller, between, random }: Tools): void {
  const distractions = [
    ['A', 'link-b', 'down', 'up'],
    ['B', 'link-a', 'down', 'up'],
    ['A', 'supply', 'fault', 'good'],
    [null, 'configuration', 'pending', 'current'],
  ] as const;
  const chosen = distractions[Math.floor(random() * 2 * distractions.length)];
  if (chosen === undefined) return;
  const [half, signal, odd, usual] = chosen;
  const state = half === null ? teller.state().pair : teller.state()[half];
  const values: Readonly<Record<string, string>> = { ...state };
  if (values[signal] !== usual) return;
  teller.set(half, signal, odd);
  teller.wait(between(2, 25));
  teller.set(half, signal, usual);
  teller.wait(between(10, 60));
}

/** A pair that does what it should, to compare with. */
export function healthyPair(pair: string, seed: number, firmware = '6.4.1'): Story {
  const tools = toolsOf(pair, seed, firmware);
  goodRestart(tools);
  goodRestart(tools);
  tools.teller.wait(4000);
  return tools.teller.story();
}

/** A site of three pairs: two as they should be, and PRETREAT, whose new module has other firmware and does not get ready. */
export function wronglyFlashed(seed: number): Files {
  const tools = toolsOf('PRETREAT', seed);
  goodRestart(tools);
  tools.teller.remove('B');
  tools.teller.wait(tools.between(60, 200));
  tools.teller.insert('B', moduleOf('X-1', '6.2.0'));
  giveUp(tools, 3);
  return filesOf({
    stories: [tools.teller.story(), healthyPair('RO1', seed + 100), healthyPair('RO2', seed + 200)],
  });
}
