import { firmwareFails, moduleFails, slotFails } from './module-troubles.ts';
import {
  distract,
  type Files,
  filesOf,
  type GaugeOf,
  giveUp,
  goodRestart,
  healthyPair,
  lose,
  moduleOf,
  replace,
  type Tools,
  toolsOf,
} from './trouble-stories.ts';

/** For each cause: the exports of a site where it is at work in PRETREAT, told anew for every seed. */
export const seededTroubles: Readonly<Record<string, (seed: number) => Files>> = {
  'active-absent': (seed) => one(seed, noneActive),
  'firmware-differs': (seed) => one(seed, (t) => replaced(t, moduleOf('X-1', '6.2.0'))),
  'models-differ': (seed) => one(seed, (t) => replaced(t, moduleOf('X-1', '6.4.1', 'Tern-2'))),
  'configuration-pending': (seed) =>
    one(seed, (t) => {
      t.teller.set(null, 'configuration', 'pending');
      restartAndGiveUp(t);
    }),
  'link-down': (seed) => one(seed, seed % 2 === 0 ? linkStaysDown : linkComesAndGoes),
  'links-crossed': (seed) =>
    one(seed, (t) => {
      replace(t, 'B', moduleOf('X-1'));
      t.teller.set('B', 'links', 'crossed');
      giveUp(t, 3);
    }),
  'restart-loop': (seed) => one(seed, restarts),
  'poor-seating': (seed) => one(seed, poorContact),
  'supply-fault': (seed) => one(seed, seed % 2 === 0 ? supplyStaysDown : supplyDips),
  'active-overloaded': (seed) => one(seed, restartAndGiveUp, overload),
  'memory-short': (seed) => one(seed, (t) => replaced(t, moduleOf('X-1')), littleMemory),
  'aborts-at-fixed-time': (seed) => one(seed, fixedAborts),
  'follows-module': (seed) => one(seed, moduleFails),
  'follows-slot': slotFails,
  'firmware-wide': (seed) => firmwareFails(seed),
  'too-little-data': (seed) => {
    const files = one(seed, linkComesAndGoes);
    const cut = Object.entries(files).map(([name, text]) => [name, withoutLinks(text)] as const);
    return Object.fromEntries(cut);
  },
};

/** The active half leaves its role, and the standby tries to synchronise with none. */
function noneActive(tools: Tools): void {
  tools.teller.set('A', 'role', 'none');
  lose(tools);
  giveUp(tools, 3);
}

function withoutLinks(text: string): string {
  return text
    .split('\n')
    .filter((line) => !/\] links? |,links?(?:-[ab])?,/.test(line))
    .join('\n');
}

function one(seed: number, trouble: (tools: Tools) => void, gauge?: (troubleFrom: number) => GaugeOf): Files {
  const tools = toolsOf('PRETREAT', seed);
  goodRestart(tools);
  const from = tools.teller.now();
  trouble(tools);
  const stories = [tools.teller.story(), healthyPair('RO1', seed + 100), healthyPair('RO2', seed + 200)];
  const polled = seed % 3 === 0;
  return filesOf(gauge === undefined ? { stories, polled } : { stories, polled, gauge: gauge(from) });
}

function replaced(tools: Tools, module: ReturnType<typeof moduleOf>): void {
  replace(tools, 'B', module);
  giveUp(tools, 3);
}

function restartAndGiveUp(tools: Tools): void {
  tools.teller.happen('B', 'restart');
  lose(tools);
  giveUp(tools, 4);
}

function linkStaysDown(tools: Tools): void {
  tools.teller.set('B', 'link-b', 'down');
  tools.teller.wait(tools.between(2, 8));
  lose(tools);
  giveUp(tools, 3);
}

function linkComesAndGoes(tools: Tools): void {
  comesAndGoes(tools, 'link-a', 'down', 'up');
}

function supplyStaysDown(tools: Tools): void {
  tools.teller.set('B', 'supply', 'fault');
  tools.teller.wait(tools.between(2, 8));
  lose(tools);
  giveUp(tools, 3);
}

function supplyDips(tools: Tools): void {
  comesAndGoes(tools, 'supply', 'fault', 'good');
}

/** A fault that comes and goes, and ends each attempt seconds after it comes. */
function comesAndGoes(tools: Tools, signal: string, bad: string, good: string): void {
  const { teller, between, chance } = tools;
  for (let index = 0; index < 5; index += 1) {
    teller.set('B', signal, bad);
    teller.wait(between(1, 6));
    if (index === 0) lose({ teller });
    else teller.happen('B', 'sync-failed');
    teller.wait(between(5, 30));
    teller.set('B', signal, good);
    teller.wait(between(60, 300));
    distract(tools);
    teller.happen('B', 'sync-start');
    teller.wait(chance(150));
  }
}

function restarts({ teller, between }: Tools): void {
  const period = between(90, 240);
  for (let index = 0; index < 6; index += 1) {
    teller.happen('B', 'restart');
    if (index === 0) lose({ teller });
    teller.wait(period * 0.3);
    teller.happen('B', 'sync-start');
    teller.wait(period * (0.7 + 0.04 * (between(0, 1) - 0.5)));
  }
}

function poorContact({ teller, between, chance }: Tools): void {
  for (let index = 0; index < 5; index += 1) {
    teller.set(null, 'partner-present', 'no');
    teller.set('B', 'link-a', 'down');
    teller.set('B', 'link-b', 'down');
    if (index === 0) lose({ teller });
    else teller.happen('B', 'sync-failed');
    // Long enough that a poll of ten seconds sees most of them.
    teller.wait(between(4, 25));
    teller.set(null, 'partner-present', 'yes');
    teller.set('B', 'link-a', 'up');
    teller.set('B', 'link-b', 'up');
    teller.wait(between(60, 300));
    teller.happen('B', 'sync-start');
    teller.wait(chance(150));
  }
}

const overload =
  (from: number): GaugeOf =>
  (pair, half, time) => ({
    load: pair === 'PRETREAT' && half === 'A' && time >= from ? 96 : 35,
    memory: 4000,
  });

const littleMemory =
  (from: number): GaugeOf =>
  (pair, half, time) => ({
    load: 35,
    memory: pair === 'PRETREAT' && half === 'B' && time >= from ? 250 : 4000,
  });

function fixedAborts(tools: Tools): void {
  const { teller, between } = tools;
  const limit = between(60, 400);
  teller.happen('B', 'restart');
  lose({ teller });
  for (let index = 0; index < 5; index += 1) {
    teller.wait(between(40, 300));
    distract(tools);
    teller.happen('B', 'sync-start');
    teller.wait(limit * (1 + 0.02 * (between(0, 1) - 0.5)));
    teller.happen('B', 'sync-failed');
  }
  teller.wait(200);
}
