import type { Story } from '../../samples/story.ts';
import {
  type Files,
  filesOf,
  giveUp,
  goodRestart,
  healthyPair,
  lose,
  moduleOf,
  replace,
  type Tools,
  toolsOf,
} from './trouble-stories.ts';

/** X fails in B, the old module is ready there again; after a switchover X fails in A too. */
export function moduleFails(tools: Tools): void {
  const { teller, between } = tools;
  replace(tools, 'B', moduleOf('X-1'));
  giveUp(tools, 4);
  replace(tools, 'B', moduleOf('PRETREAT-2'));
  teller.synchronise('B', between(110, 150), between(200, 270));
  teller.wait(900);
  teller.switchOver(true);
  teller.wait(900);
  replace(tools, 'A', moduleOf('X-1'));
  giveUp(tools, 4, 'A');
}

/** Three modules fail in B of PRETREAT; each of them is ready in another pair, again after a restart. */
export function slotFails(seed: number): Files {
  const tools = toolsOf('PRETREAT', seed);
  goodRestart(tools);
  const serials = ['X-1', 'X-2', 'X-3'];
  for (const serial of serials) {
    replace(tools, 'B', moduleOf(serial));
    giveUp(tools, 3);
  }
  const others = serials.map((serial, index): Story => {
    const other = toolsOf(`RO${index + 1}`, seed + 100 * index);
    goodRestart(other);
    replace(other, 'B', moduleOf(serial));
    other.teller.synchronise('B', other.between(110, 150), other.between(200, 270));
    goodRestart(other);
    return other.teller.story();
  });
  return filesOf({ stories: [tools.teller.story(), ...others] });
}

/** PRETREAT, RO1 and RO2 run 6.4.1 and have trouble; RO3 and RO4 run 6.2.0 and have none, unless all are to have it. */
export function firmwareFails(seed: number, everywhere = false): Files {
  const tools = toolsOf('PRETREAT', seed);
  goodRestart(tools);
  lose(tools);
  giveUp(tools, 4);
  const troubled = ['RO1', 'RO2'].map((pair, index) => troubledPair(pair, seed + 100 * (index + 1), '6.4.1'));
  const others = ['RO3', 'RO4'].map((pair, index) =>
    (everywhere ? troubledPair : healthyPair)(pair, seed + 300 + index, '6.2.0'),
  );
  return filesOf({ stories: [tools.teller.story(), ...troubled, ...others] });
}

/** A pair that loses its partner five times and gets it back. */
function troubledPair(pair: string, seed: number, firmware: string): Story {
  const tools = toolsOf(pair, seed, firmware);
  goodRestart(tools);
  for (let times = 0; times < 5; times += 1) {
    lose(tools);
    giveUp(tools, 1);
    tools.teller.synchronise('B', tools.between(110, 150), tools.between(200, 270));
    tools.teller.wait(tools.chance(700));
  }
  return tools.teller.story();
}
