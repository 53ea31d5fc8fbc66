/** The fast lane of tables must come to what the general lane comes to: changes, counts, notices, lines, all of it. */
import fc from 'fast-check';
import { afterAll, describe, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { compare, tried } from '../support/compare-lanes.ts';
import { calm, longPoll, type Stretch } from '../support/long-polls.ts';
import { clock, journal, oddities, plain, poll, restless, stamps } from '../support/odd-polls.ts';

afterAll(() => {
  console.log(
    `two lanes: ${tried.files} files alike in ${tried.chunks.size} chunk sizes, ${tried.seams} seams between chunks`,
  );
});

describe('the fast lane comes to what the general one comes to', () => {
  for (const [name, odd] of Object.entries(oddities))
    test(`with ${name}`, async () => {
      for (const stamp of Object.values(stamps)) {
        await compare(poll(stamp, ';', odd), 65_536, 97);
        await compare(journal(stamp, ';', odd), 65_536, 89);
      }
      await compare(
        poll((s) => (stamps.plain ?? clock)(s), ',', odd),
        65_536,
        1000,
      );
      if (name === 'cut off') await compare(poll(clock, '\t', odd).trimEnd(), 65_536, 13);
    });

  test('with every seam that a small file has', async () => {
    for (const odd of [
      'nothing',
      'quotes',
      'carriage returns',
      'a quoted line end',
      'a mark inside',
    ] as const) {
      const text = poll((s) => (stamps.plain ?? clock)(s), ',', oddities[odd] ?? plain, 5);
      await compare(text, ...Array.from({ length: 120 }, (_, index) => index + 1));
    }
    const marked = new Uint8Array([
      0xef,
      0xbb,
      0xbf,
      ...new TextEncoder().encode(poll(clock, '|', plain, 4)),
    ]);
    await compare(marked, 1, 2, 3, 4, 5, 50);
  }, 60_000);

  test('through the nights on which the clocks change', async () => {
    for (const [begin, by] of [
      ['2026-10-25T00:30:00Z', 60],
      ['2026-03-29T00:30:00Z', 60],
      ['2026-10-24T22:00:00Z', 600],
    ] as const) {
      const local = (s: number): string =>
        new Date(Date.parse(begin) + s * by * 100 + 3_600_000).toISOString().slice(0, 19).replace('T', ' ');
      await compare(poll(local, ',', plain, 80), 65_536, 101);
      // The hour once more, as the clocks show it.
      const twice = (s: number): string => local(s > 300 ? s - ((60 * 3600) / (by * 100)) * 1 : s);
      await compare(poll(twice, ',', plain, 80), 65_536, 101);
    }
  });

  test('in Windows-1252 and with bytes that are no text', async () => {
    const bytes = new TextEncoder().encode(poll(clock, ',', plain));
    const foreign = Uint8Array.from(bytes, (byte, index) => (index % 211 === 100 && byte > 96 ? 0xe4 : byte));
    const late = Uint8Array.from(bytes, (byte, index) => (index === bytes.length - 20 ? 0xff : byte));
    // 80, 93 and 94 are the euro sign and curly quotes in Windows-1252, and controls in Latin-1.
    const curly = Uint8Array.from(bytes, (byte, index) =>
      index % 97 === 50 && byte > 96 ? ([0x80, 0x93, 0x94][index % 3] ?? 0) : byte,
    );
    for (const some of [foreign, late, curly]) await compare(some, 65_536, 77, 3);
  });

  test('as an alarm list whose rows say when each ended', async () => {
    const stamp = stamps.plain ?? clock;
    const rows = Array.from({ length: 300 }, (_, i) => {
      // Most have ended, after times that come again; some stand, some end where nobody can.
      const ended = i % 7 === 0 ? '' : i % 31 === 0 ? '?' : stamp(i * 20 + (i % 3) * 10);
      const message = ['partner not ready', 'link a down', 'door 4 open', 'sync failed'][i % 4] ?? '';
      return `${stamp(i * 20)},${ended},RO${i % 3}-A,${message}`;
    });
    await compare(`time,cleared,unit,message\n${rows.join('\n')}\n`, 65_536, 97);
  });

  test('as a table of pairs whose column names say the half', async () => {
    const stamp = stamps.plain ?? clock;
    const rows = Array.from({ length: 300 }, (_, i) => {
      const light = i % 50 < 5 ? 'flashing' : 'steady';
      return `${stamp(Math.floor(i / 2) * 10)},INTAKE-${i % 2},active,standby,off,${light},${i % 90 < 3 ? 'no' : 'yes'}`;
    });
    await compare(`time,pair,role A,role B,light A,light B,partnerReady\n${rows.join('\n')}\n`, 65_536, 97);
  });

  test('as snapshots with gauges and roles', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => {
      const at = (stamps.plain ?? clock)(i * 10);
      const [a, b] = i < 30 ? ['active', 'standby'] : ['standby', 'active'];
      const load = (30 + (i % 5) / 4).toFixed(2);
      return `${at},RO1-A,${a},6.2.0,${load},${i % 6 === 0 ? '' : 4096 - i},steady\n${at},RO1-B,${b},6.2.0,${load},${i === 40 ? 'n/a' : 2048},${i % 8 === 0 ? 'flashing' : 'steady'}`;
    });
    const header = 'time,unit,role,firmware,load,free-memory,light';
    for (const end of ['\n', '\r\n']) await compare([header, ...rows, ''].join(end), 65_536, 61, 7);
    const split = rows.map((row) => row.replaceAll(/(2026-03-14) /g, '$1,'));
    await compare([header.replace('time', 'date,clock'), ...split, ''].join('\n'), 65_536, 61);
    const late = rows.map((row) => row.replaceAll(/^([^,]*),([^,]*),/gm, '$2,$1,'));
    await compare([header.replace('time,unit', 'unit,time'), ...late, ''].join('\n'), 65_536, 61);
  });

  test('with runs of rows that are broken by changes, seldom and often', async () => {
    const random = seeded(25);
    // It begins with another spacing than most of it has.
    const stamp = (s: number): string => (stamps.plain ?? clock)(s < 100 ? s : 100 + (s - 100) * 0.7);
    for (const share of [0, 0.002, 0.02, 0.1, 0.3])
      for (const units of [1, 3, 6, 11]) {
        const text = restless(stamp, share, units, random);
        await compare(text, 65_536, 1009);
        await compare(text.replaceAll('\n', '\r\n'), 65_536, 4099);
      }
  }, 60_000);

  test('with polls that come round for long, and are disturbed now and then', async () => {
    const random = seeded(26);
    const often = 0.03;
    const all = { change: often, late: often, gap: often, twice: often, between: often, part: often };
    const stories: readonly (readonly Partial<Stretch>[])[] = [
      [{}],
      [{}, { cycles: 450, spacing: 4, change: 3 }],
      [{}, { cycles: 100, spacing: 60 }],
      [
        { twiceFrom: 0, cycles: 450 },
        { spacing: 4, cycles: 550 },
      ],
      [{}, { units: 1, quoted: 30 }],
      [{}, { spacing: 4 }],
      [{}, { setBack: 400 }],
      [{ apart: 4 }, { setBack: 400, spacing: 4, apart: 4 }],
      [{ ahead: -1 }, { ahead: 3 }],
      // What comes back last was bound with the rest before, and is not while it stays away.
      [{}, { supply: true }, { cycles: 20, change: 24 }, { supply: true, cycles: 300 }],
      [{ ahead: 25, change: often, twice: often, spacing: 20 }],
      ...Object.keys(all).map((key) => [{}, { [key]: often }, {}]),
      [{ gauge: often }, { cycles: 1, gauge: 1 }, { cycles: 1 }],
      [{}, { quoted: often }],
      [{}, { ...all, gauge: often, quoted: often, setBack: 400 }],
    ];
    for (const story of stories)
      for (const units of [1, 3, 8]) {
        const text = longPoll(
          stamps.utc ?? clock,
          story.map((s) => ({ ...calm, ...s })),
          units,
          random,
        );
        await compare(text, 65_536, 20_011, 4_000_000);
      }
  }, 120_000);

  test('with long polls of units that lie in two runs, whatever the seams', async () => {
    const random = seeded(27);
    for (const story of [{}, { change: 0.2 }, { twiceFrom: 25 }]) {
      const text = longPoll(stamps.utc ?? clock, [{ ...calm, cycles: 350, ...story }], 30, random);
      await compare(text, 4_000_000, ...Array.from({ length: 12 }, (_, index) => 40_000 + index * 9_973));
    }
  }, 120_000);

  test('as a journal', async () => {
    const rows = Array.from(
      { length: 200 },
      (_, i) =>
        `${clock(i * 7)},RO1-A,${i % 5 === 0 ? 'light steady' : i % 7 === 0 ? '"odd, message"' : 'firmware 6.4.1'}`,
    );
    await compare(['time,unit,message', ...rows, ''].join('\n'), 65_536, 53);
  });

  test('whatever is cut out of a poll, doubled or put elsewhere', async () => {
    const base = poll((s) => (stamps.plain ?? clock)(s), ',', oddities.quotes ?? plain, 12);
    const change = fc.record({
      at: fc.nat(base.length),
      length: fc.nat(60),
      to: fc.nat(base.length),
      byte: fc.constantFrom('"', ',', '\n', '\r', '\0', 'ä', '9', ''),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.array(change, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 400 }),
        async (changes, chunk) => {
          let text = base;
          for (const { at, length, to, byte } of changes) {
            const cut = text.slice(at, at + length);
            const rest = text.slice(0, at) + text.slice(at + length);
            text = rest.slice(0, to) + byte + cut + rest.slice(to);
          }
          await compare(text, chunk, 65_536);
        },
      ),
      { numRuns: 20, seed: 20_261_125 },
    );
  }, 60_000);
});
