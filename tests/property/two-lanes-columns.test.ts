/** What rows say by columns beside their values (qualities, states, tags) must come to one in both lanes. */
import { describe, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { compare, compareWith } from '../support/compare-lanes.ts';
import { clock, stamps } from '../support/odd-polls.ts';

describe('the fast lane comes to what the general one comes to', () => {
  test('with what a phrasebook says of rows by columns beside their values', async () => {
    const random = seeded(28);
    const of = <T>(...all: readonly [T, ...T[]]): T => all[Math.floor(random() * all.length)] ?? all[0];
    const phrasebook = `files:
  - { match: "*", columns: { quality: q, state: st, parameter: tag, value: v }, good: [Good], states: { UP: on, OVER: "off" } }
ignoreUnits: ["^HMI"]
parameters:
  /^(?<unit>RO\\d-[AB])\\.(lamp|load)$/: { signal: light }
  /^(?<unit>RO\\d-[AB])\\.load$/: { signal: load }
messages:
  - { when: "^lost", of: other, means: [{ signal: partner-ready, value: no }, { signal: role, value: none, off: active }] }
  - { when: "^lost", only: { unit: B }, signal: supply, value: fault }
`;
    const quality = (i: number): string =>
      i > 200 && i < 300 ? 'Bad' : of('Good', 'Good', 'Good', 'Good', 'Bad', '');
    const polled = Array.from({ length: 400 }, (_, i) =>
      ['RO1-A', 'RO1-B', 'HMI-A']
        .flatMap((unit) => [
          `${clock(i * 10)},${unit}.lamp,${i % 40 < 20 ? 'steady' : 'off'},${quality(i)}`,
          `${clock(i * 10)},${unit}.load,${(30 + (i % 7) / 4).toFixed(2)},${quality(i)}`,
        ])
        .join('\n'),
    );
    const readings = phrasebook.replace(', state: st', '').replace('(lamp|load)', 'lamp');
    for (const end of ['\n', '\r\n'])
      await compareWith(
        { phrasebook: readings },
        ['time,tag,v,q', ...polled, ''].join(end),
        65_536,
        101,
        4_000_000,
      );
    const told = Array.from({ length: 300 }, (_, i) => {
      const unit = of('RO1-A', 'RO1-B', 'HMI-B');
      return `${clock(i * 0.6)},${unit},${of('lost', 'link a down', 'fan 3')},${of('UP', 'OVER', 'ACK')}`;
    });
    const conditions = phrasebook.replace('quality: q, ', '').replace(', parameter: tag, value: v', '');
    await compareWith(
      { phrasebook: conditions },
      ['time,unit,message,st', ...told, ''].join('\n'),
      65_536,
      83,
      4_000_000,
    );
    const rows = Array.from({ length: 200 }, (_, i) =>
      ['RO1-A', 'RO1-B']
        .map((unit) => `${clock(i * 10)},${unit},${i % 50 < 25 ? 'off' : 'steady'},41.5,${quality(i)}`)
        .join('\n'),
    );
    const snaps = 'files: [{ match: "*", columns: { quality: q } }]\n';
    await compareWith(
      { phrasebook: snaps },
      ['time,unit,light,load,q', ...rows, ''].join('\n'),
      65_536,
      83,
      4_000_000,
    );
  }, 120_000);

  test('with qualities, tags, states of conditions and names that are no pairs', async () => {
    const row = (i: number): string => (stamps.plain ?? clock)(i * 10);
    const table = (header: string, cells: (i: number) => string): string =>
      [header, ...Array.from({ length: 120 }, (_, i) => cells(i)), ''].join('\n');
    const quality = (i: number): string => (i % 11 === 5 ? 'Bad' : 'Good');
    const light = (i: number): string => (i % 7 < 4 ? 'off' : 'steady');
    const files = [
      table('Time,Tag,Value,Quality', (i) => `${row(i)},RO${i % 3}-A.Light,${light(i)},${quality(i)}`),
      table('time,unit,parameter,value,quality', (i) => `${row(i)},RO1-A,light,${light(i)},${quality(i)}`),
      table(
        'Time,RO1-A.Light,Quality,RO1-B.Light',
        (i) => `${row(i)},${light(i)},${quality(i)},${light(i + 1)}`,
      ),
      table(
        'time,unit,message,state',
        (i) => `${row(i)},RO1-A,supply fault,${['ACTIVE', 'ACKED', 'CLEARED'][i % 3]}`,
      ),
      table('time,unit,message', (i) => `${row(i)},${i % 9 === 8 ? 'RO1-A' : 'SYSTEM'},light ${light(i)}`),
    ];
    for (const text of files) await compare(text, 65_536, 61, 7);
  });

  test('with tags and the qualities of their values, in more states than are kept, by built-in words and by a rule', async () => {
    const random = seeded(31);
    const units = Array.from({ length: 8 }, (_, u) => `RO${1 + (u >> 1)}-${u % 2 === 0 ? 'A' : 'B'}`);
    const kinds = ['light', 'supply', 'load', 'firmware'] as const;
    const words = {
      light: ['off', 'steady'],
      supply: ['good', 'fault'],
      firmware: ['6.2.0', '6.4.1'],
    } as const;
    const names = units.flatMap((unit) => kinds.map((kind) => ({ tag: `${unit}.${kind}`, kind })));
    const states = names.map(() => ({ value: 0, quality: 'Good' }));
    const rows = Array.from({ length: 400 }, (_, cycle) => {
      for (const state of states) {
        if (random() < 0.004) state.value = 1 - state.value;
        if (random() < 0.002) state.quality = state.quality === 'Good' ? 'Bad' : 'Good';
      }
      const cells = names.flatMap(({ kind }, at) => {
        const { value = 0, quality = '' } = states[at] ?? {};
        return [kind === 'load' ? (30 + (cycle % 9) / 4).toFixed(2) : (words[kind][value] ?? ''), quality];
      });
      return [clock(cycle * 10), ...cells, cycle % 50 === 49 ? 'by hand' : ''].join(',');
    });
    const header = ['time', ...names.flatMap(({ tag }) => [tag, 'Quality']), 'Remark'];
    const whole = [header.join(','), ...rows, ''].join('\n');
    const bare = whole.replaceAll(/,(?:Quality|Good|Bad)(?=,)/g, '');
    const rule = 'files: [{ match: "*", header: "^(?<unit>RO[0-9]-[AB])[.](?<parameter>.+)$" }]\n';
    for (const text of [whole, bare]) {
      await compare(text, 65_536, 4099);
      await compareWith({ phrasebook: rule }, text, 65_536, 4099);
    }
  }, 120_000);
});
