/** The fast lane of tables that a rule for files describes must come to what the general lane comes to. */
import { describe, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { compareWith } from '../support/compare-lanes.ts';
import { clock, journal, oddities, plain, poll, stamps } from '../support/odd-polls.ts';

/** Values of a parameter, as long as each other and not. */
const wideValues: Readonly<Record<string, readonly [string, string]>> = {
  firmware: ['6.2.0', '6.4.1'],
  supply: ['good', 'fault'],
  serial: ['T4-20801', ''],
  light: ['off', 'steady'],
  humour: ['dry', 'good'],
};

describe('the fast lane comes to what the general one comes to', () => {
  test('in files of one half, whose rows say little themselves', async () => {
    for (const rule of ['unit: RO1-A', 'unit: RO1']) {
      const phrasebook = `files: [{ match: "*", ${rule} }]\n`;
      const withoutUnits = poll(stamps.plain ?? clock, ',', plain).replaceAll(/^([^,]*),[^,]*,/gm, '$1,');
      await compareWith({ phrasebook }, withoutUnits, 65_536, 97);
      await compareWith({ phrasebook }, poll(stamps.plain ?? clock, ',', plain), 65_536, 97);
      await compareWith({ phrasebook }, journal(stamps.utc ?? clock, ';', plain), 65_536, 89);
    }
  });

  test('with stamps that are counts, and columns by number without a header', async () => {
    const count = (by: number) => (s: number) => String((Date.UTC(2026, 2, 14, 9) / 1000 + s) * by);
    const numbered = 'columns: { time: "#1", unit: "#2", parameter: "#3", value: "#4" }';
    for (const [stamp, time] of [
      [count(1), '{ epoch: s }'],
      [count(1e6), '{ epoch: us }'],
      [(s: number) => `[${s}.250000]`, '{ since: "2026-03-14T09:00:00Z" }'],
      [stamps.european ?? clock, '{ order: day-first, zone: Asia/Kolkata }'],
    ] as const) {
      const rows = poll(stamp, ';', oddities['too few cells'] ?? plain);
      await compareWith({ phrasebook: `files: [{ match: "*", time: ${time} }]\n` }, rows, 65_536, 101);
      const phrasebook = `files: [{ match: "*", time: ${time}, ${numbered} }]\n`;
      await compareWith({ phrasebook }, rows.slice(rows.indexOf('\n') + 1), 65_536, 101);
    }
  });

  test('as wide tables, which change seldom and often, in one column or in many', async () => {
    const phrasebook = 'files: [{ match: "*", header: "^(?<unit>RO[0-9]+-[AB])[.](?<parameter>.+)$" }]\n';
    const random = seeded(28);
    const names = ['firmware', 'supply', 'serial', 'light', 'load', 'humour'];
    for (const [units, share] of [
      [1, 0.1],
      [3, 0.002],
      [12, 0.002],
      [30, 0.0002],
    ] as const)
      for (const stamp of [stamps.plain ?? clock, stamps.european ?? clock]) {
        const tags = Array.from({ length: units }, (_, u) => `RO${u}-${u % 2 === 0 ? 'A' : 'B'}`);
        const kinds = names.filter((name) => units < 12 || name !== 'load');
        const header = tags.flatMap((tag) => kinds.map((name) => `${tag}.${name}`));
        const values = header.map(() => 0);
        const rows = Array.from({ length: 240 }, (_, cycle) => {
          for (const [at] of values.entries()) if (random() < share) values[at] = 1 - (values[at] ?? 0);
          const cells = header.map((name, at) => {
            const choice = wideValues[name.slice(name.indexOf('.') + 1)] ?? ['41.5', '41.75'];
            return choice[values[at] ?? 0] ?? '';
          });
          return [stamp(cycle * 10 + (cycle > 150 ? 600 : 0)), ...cells].join(',');
        });
        const text = [['time', ...header].join(','), ...rows, ''].join('\n');
        await compareWith({ phrasebook }, text, 65_536, 4099);
        // Where the stamp does not come first.
        const behind = text.replaceAll(/^([^,]*),([^,]*),/gm, '$2,$1,');
        await compareWith({ phrasebook }, behind, 65_536, 4099);
      }
  }, 60_000);
});
