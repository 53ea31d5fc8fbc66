import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import { readJob } from '../../../../src/pipeline.ts';
import { readText } from '../../../support/read-text.ts';
import { fileWith, steadypair } from '../../../support/run-command.ts';

const many = Array.from({ length: 20_000 }, (_, place) => place);
const refusal =
  'x.yaml: it is larger than 10 MB, too large for a phrasebook or job file. Check the file name, or remove duplicate rules.';

describe('a phrasebook of 20,000 keys', () => {
  // Each takes about a second; by the square of the keys it took eight.
  test.each([
    ['parameters', `parameters:\n${many.map((n) => `  Item${n}: { signal: light }\n`).join('')}`],
    [
      'values',
      `parameters:\n  L:\n    signal: light\n    values:\n${many.map((n) => `      v${n}: off\n`).join('')}`,
    ],
  ])(
    'is read: %s',
    (_name, yaml) => {
      expect(readPhrasebook('x.yaml', yaml).units.length).toBeGreaterThan(0);
    },
    10_000,
  );

  test('that are patterns is read, and the one that fits is found among them', async () => {
    const lines = [
      'messages:',
      ...many.map((n) => `  - { when: "^link ${n}x (?<value>up|down)", signal: link-a }`),
      'units:',
      ...many.map((n) => `  - { pattern: "^P${n}:(?<half>[AB])$", pair: P${n} }`),
    ];
    const rows = ['2026-03-14T09:00:00Z,P19999:B,link 19998x down', '2026-03-14T09:00:01Z,P7:A,link 1x up'];
    const log = `time,unit,message\n${rows.join('\n')}\n`;
    const { changes } = await readText('x.csv', log, { phrasebook: `${lines.join('\n')}\n` });
    expect(
      allChanges(changes).map(({ subject: { pair, half }, signal, value }) => [pair, half, signal, value]),
    ).toEqual([
      ['P19999', 'B', 'link-a', 'down'],
      ['P7', 'A', 'link-a', 'up'],
    ]);
    const broken = `${lines.join('\n')}\n  - { pattern: "^P1:([AB]$", pair: P1 }\n`;
    expect(() => readPhrasebook('x.yaml', broken)).toThrow(
      'x.yaml: units[20000].pattern is not a valid pattern: ',
    );
  }, 40_000);

  test('that no phrasebook has is one line', () => {
    const yaml = many.map((n) => `k${n}: 1\n`).join('');
    expect(() => readPhrasebook('x.yaml', yaml)).toThrow('x.yaml: k0 is not a key here.');
  }, 10_000);

  test.each([
    ['name: a\nparameters:\n  X: { signal: light }\n  Y: { signal: light }\n  X: { signal: role }\n', 5],
    ['name: a\n"name": b\n', 2],
    ['messages:\n  - { when: a, when: b, signal: fault }\n', 2],
  ])('or of one key twice is a line that says where: %j', (yaml, line) => {
    expect(() => readPhrasebook('x.yaml', yaml)).toThrow(
      `x.yaml:${line}: Map keys must be unique. Correct the YAML.`,
    );
  });
});

describe('a phrasebook or job of more than 10 MB', () => {
  test('is refused at once; one a character shorter is read', async () => {
    const comment = (length: number): string => `#${'x'.repeat(length - 2)}\n`;
    expect(() => readPhrasebook('x.yaml', comment(10_000_001))).toThrow(refusal);
    expect(() => readJob('x.yaml', comment(10_000_001))).toThrow(refusal);
    expect(readPhrasebook('x.yaml', comment(10_000_000)).units.length).toBeGreaterThan(0);
    const log = fileWith('2026-03-14T10:00:00Z RO1 partner ready\n', 'x.log');
    const path = fileWith('ignore: [a]\n'.repeat(5_000_000), 'x.yaml');
    const { status, err } = await steadypair('inspect', log, '--phrasebook', path);
    expect([status, err]).toEqual([2, `${path.slice(0, -6)}${refusal}\n`]);
    expect(await steadypair('inspect', log, '--phrasebook', '/dev/zero')).toMatchObject({
      status: 2,
      err: '/dev/zero: it is a device, not a file. Name a file.\n',
    });
  }, 10_000);
});
