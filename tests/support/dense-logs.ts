import { happenings, stateValues } from '../../src/vocabulary.ts';
import { clock } from './odd-polls.ts';

const identities = { firmware: ['6.2.0', '6.4.1'], model: ['M1', 'M2'], serial: ['T4-1', 'T4-2'] };
const polled = { ...stateValues, ...identities };
const journalled = happenings.filter((name) => name !== 'note' && name !== 'fault');

/** A poll and a journal of one pair in which everything changes all the time: `changes` of them in all, half in each. */
export function denseLogs(changes: number, random: () => number): Readonly<Record<string, string>> {
  const pick = <T>(of: readonly T[]): T | undefined => of[Math.floor(random() * of.length)];
  const poll = ['time,unit,parameter,value'];
  const journal = ['time,unit,message'];
  for (let index = 0; index < changes / 2; index += 1) {
    const [name, values] = pick(Object.entries(polled)) ?? ['light', ['steady']];
    poll.push(`${clock(index * 10)},RO1-${pick(['A', 'B'])},${name},${pick(values)}`);
    journal.push(`${clock(index * 10 + 5 * random())},RO1-${pick(['A', 'B'])},${pick(journalled)}`);
  }
  return { 'poll.csv': `${poll.join('\n')}\n`, 'journal.csv': `${journal.join('\n')}\n` };
}
