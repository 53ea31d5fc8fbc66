import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Name, nameFinder } from '../../../src/bundle/find-names.ts';
import { noSettings } from '../../../src/bundle/inside.ts';
import { makeBundle } from '../../../src/bundle/make-bundle.ts';
import { namesInText } from '../../../src/bundle/names-in-text.ts';
import { platform } from '../../../src/cli/platform.ts';
import { sourceOf } from '../../support/read-text.ts';
import { membersOf, textIn } from '../../support/zip-members.ts';

function named(original: string, isExact = false): Name {
  return { kind: 'pair', original, isExact };
}

describe('where a name stands', () => {
  test.each([
    ['RO1', 'RO1-A ro1_poll.csv, Ro1: dutyRO1 RO1B', ['RO1', 'ro1', 'Ro1', 'RO1', 'RO1']],
    ['RO1', 'RO10 PRO1 FRO1 RO1234', []],
    ['PORT', 'report PORT ports Port', ['PORT', 'Port']],
    ['10447', '10447 T10447x 10447.5 08:10447 1,10447 210447', ['10447', '10447']],
    ['10.0.0.1', '10.0.0.1 10.0.0.12 from=10.0.0.1:80', ['10.0.0.1', '10.0.0.1']],
  ])('%s in %j', (original, text, places) => {
    const found = nameFinder([named(original)])(text);
    expect(found.map(({ from, to }) => text.slice(from, to))).toEqual(places);
  });

  test('one that is an ordinary word is found to the letter only, and the longest name counts', () => {
    expect(nameFinder([named('SYNC', true)])('sync SYNC Sync').map(({ from }) => from)).toEqual([5]);
    const both = nameFinder([named('RO1'), named('RO1-WEST')]);
    expect(both('RO1-WEST RO1').map(({ name }) => name.original)).toEqual(['RO1-WEST', 'RO1']);
  });
});

test.each([
  ['from 10.20.30.41 to 192.168.1.1', ['10.20.30.41', '192.168.1.1']],
  ['release 6.4.1.2 of 127.0.0.1 and 255.255.255.0', []],
  ['peer fe80::1ff:fe23:4567:890a up at 10:15:30', ['fe80::1ff:fe23:4567:890a']],
  [
    'mac 00:1b:44:11:3a:b7 and 00-1B-44-11-3A-B8 at 26-03-14-10-15-30',
    ['00:1b:44:11:3a:b7', '00-1B-44-11-3A-B8'],
  ],
  ['mail to j.doe@plant.example.', ['j.doe@plant.example']],
  ['user jdoe logged on; logged off by mmiller; user=anna', ['jdoe', 'anna', 'mmiller']],
  ['user Operator 3 logged on', ['Operator 3']],
  ['user admin logged on, session opened for root', []],
])('of %j the names are %j', (text, names) => {
  const found = namesInText(text, new Set(['6.4.1.2'])).map(({ original }) => original);
  expect([...found].sort()).toEqual([...names].sort());
});

describe('a mask', () => {
  const line = (minute: number, text: string): string =>
    `${new Date(Date.UTC(2026, 2, 14, 8) + minute * 60_000).toISOString()} ${text}\n`;

  /** A swap in a log whose units have that form, read with a phrasebook. */
  async function maskedWith(
    unit: (half: string) => string,
    phrasebook: string,
    more: readonly string[] = [],
  ) {
    const log = [
      line(0, `${unit('A')} role active`),
      line(0, `${unit('B')} role standby`),
      line(0, `${unit('B')} serial T2-10447`),
      line(0, `${unit('A')} partner ready`),
      ...more.map((text) => line(10, text)),
      line(30, `${unit('B')} removed`),
      line(32, `${unit('B')} inserted`),
      line(33, `${unit('B')} serial T4-20831`),
      line(33, `${unit('B')} role standby`),
      line(34, `${unit('A')} partner ready`),
      line(80, `${unit('A')} role active`),
    ].join('');
    const made = await makeBundle(
      {
        command: 'verify',
        sources: [sourceOf('events.log', log)],
        failures: [],
        phrasebook: { file: 'site.yaml', text: phrasebook },
        job: null,
        settings: noSettings,
      },
      { platform, version: '0' },
      { place: 'case.zip', isMasked: true },
    );
    const members = await membersOf(made.bytes);
    expect(JSON.parse(textIn(members, 'verify.json')).swaps.length).toBe(1);
    return {
      log: textIn(members, 'logs/events.log'),
      phrasebook: textIn(members, 'phrasebook.yaml'),
      key: made.key ?? '',
    };
  }

  test('parts of names in patterns of units are masked with them', async () => {
    const found = await maskedWith(
      (half) => `RO1-${half}`,
      "units:\n  - pattern: '^(?<pair>RO\\d)-(?<half>[AB])$'\nignoreUnits: ['^HMI']\n",
      ['HMI2 role active'],
    );
    expect(found.phrasebook).toMatch(/\(\?<pair>[A-Z]{2}\\d\)-\(\?<half>\[AB\]\)/);
    expect(found.log + found.phrasebook).not.toMatch(/RO1|RO\\d|HMI/);
  });

  test('names of hosts are masked whole, and the half in them stays', async () => {
    const found = await maskedWith(
      (half) => `ctl-ro1-${half.toLowerCase()}.plant.example`,
      "units:\n  - pattern: '^ctl-(?<pair>[a-z]+\\d)-(?<half>[ab])\\.'\n",
    );
    expect(found.log).toMatch(/ [a-z]{3}-[a-z]{2}1-a\.[a-z]{5}\.[a-z]{7} role active/);
    expect(found.log + found.phrasebook).not.toMatch(/ctl|ro1|plant/i);
  });

  test('a pair whose name is also a word of the logs leaves the word as it is', async () => {
    const found = await maskedWith(
      (half) => `SYNC-${half}`,
      "units:\n  - pattern: '^(?<pair>[A-Z]+)-(?<half>[AB])$'\n",
      ['SYNC-A sync start'],
    );
    expect(found.log).toMatch(/ [A-Z]{4}-A sync start\n/);
    expect(found.log).not.toContain('SYNC');
  });

  test('a stored timeline is refused', async () => {
    const parquet = readFileSync(join('samples', 'marrow-bay-fleet', 'ro1.parquet'));
    const one = {
      command: 'verify' as const,
      sources: [sourceOf('ro1.parquet', parquet)],
      failures: [],
      phrasebook: null,
      job: null,
      settings: noSettings,
    };
    await expect(
      makeBundle(one, { platform, version: '0' }, { place: 'case.zip', isMasked: true }),
    ).rejects.toThrow(
      'case.zip: what could not be masked: ro1.parquet is a stored timeline. Nothing was written. Give the logs',
    );
  });
});
