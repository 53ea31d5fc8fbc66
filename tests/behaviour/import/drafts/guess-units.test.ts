import { describe, expect, test } from 'vitest';
import { guessUnits, unitOfFile } from '../../../../src/import/drafts/guess-units.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

const plain = readPhrasebook('built-in', null);

describe('the unit that the name of a file tells', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['node-a.log', 'NODE-A'],
    ['exports/gate_2.log.gz', 'GATE-2'],
    ['site.zip/ro1-b/messages', 'RO1-B'],
    ['gate7.txt', 'GATE7'],
    ['20260314.log', 'PAIR'],
    ['outfall-b-2026.csv', 'OUTFALL-B'],
  ];
  for (const [file, unit] of cases)
    test(`${file} is of ${unit}`, () => {
      expect(unitOfFile(file, [file])).toBe(unit);
    });

  test('has its half at the end, where a pair has a number too', () => {
    const files = ['kiln-7-a.log', 'kiln-7-b.log'];
    expect(files.map((file) => unitOfFile(file, files))).toEqual(['KILN_7-A', 'KILN_7-B']);
  });

  test('is that of its folder where files of several folders have one name', () => {
    const files = ['x/node-a/keeper.log', 'x/node-b/keeper.log'];
    expect(files.map((file) => unitOfFile(file, files))).toEqual(['NODE-A', 'NODE-B']);
  });
});

describe('the rules for units', () => {
  const rules = (...units: readonly string[]): unknown =>
    guessUnits(units, plain).map(({ pattern, pair }) => ({ pattern, pair }));

  test('take two names that differ only in how they end for the halves of one pair', () => {
    expect(rules('ctl.7.a', 'ctl.7.b', 'ctl.7.a')).toEqual([
      { pattern: '^(?<pair>ctl\\.7)\\.(?<half>a|b)$', pair: null },
    ]);
    expect(rules('node2', 'node1')).toEqual([{ pattern: '^(?<pair>node)(?<half>1|2)$', pair: null }]);
    expect(rules('plc-left', 'plc-right')).toEqual([
      { pattern: '^(?<pair>plc)-(?<half>left|right)$', pair: null },
    ]);
  });

  test('take any other two for the halves of one pair, and one alone for a pair', () => {
    expect(rules('heron', 'egret')).toEqual([{ pattern: '^(?<half>egret|heron)$', pair: 'egret and heron' }]);
    expect(rules('heron')).toEqual([{ pattern: '^heron$', pair: 'heron' }]);
  });

  test('are none where the names are those of pairs or halves already, or may be anything', () => {
    expect(rules('RO1-A', 'RO1-B')).toEqual([]);
    expect(rules('RO1', 'RO2', 'RO3')).toEqual([]);
    expect(guessUnits(['RO1', 'RO2'], plain)).toMatchObject([
      { pattern: '^(?<pair>RO)(?<half>1|2)$', isOn: false },
    ]);
    expect(rules('alpha', 'beta', 'gamma')).toEqual([]);
    expect(rules('WARN', 'INFO')).toEqual([]);
    expect(rules('W', 'I')).toEqual([]);
  });
});
