import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

const said = ({ changes }: ImportedFile): readonly string[] =>
  allChanges(changes).map(({ subject, signal, value }) => `${subject.pair} ${signal} ${value}`);

describe('a word of severity', () => {
  test('is no pair: those of the log are RO1 and RO2', async () => {
    const file = await readText('x.log', readFileSync(join('tests', 'fixtures', 'faults', 'two-pairs.log')));
    expect(file.input.units).toEqual(['RO1-A', 'RO2-A']);
    expect(said(file)).toEqual([
      'RO1 partner-ready yes',
      'RO2 partner-ready yes',
      'RO1 partner-ready no',
      // An entry each: a journal says it again.
      'RO2 partner-ready yes',
      'RO2 partner-ready yes',
    ]);
  });

  const stamp = '2026-03-01 10:00:00Z';
  test.each([
    `${stamp} INFO RO1-A light steady`,
    `${stamp} [warn ] RO1-A light steady`,
    `${stamp} <Error>: RO1-A: light steady`,
    `${stamp} | NOTICE | RO1-A light steady`,
    `${stamp}, Critical, [RO1-A] light steady`,
    `DEBUG ${stamp} RO1-A light steady`,
    `[FATAL] ${stamp} RO1-A light steady`,
  ])('is skipped: %s', async (line) => {
    const file = await readText('x.log', `${line}\n${line.replace('steady', 'off')}\n`);
    expect([said(file), file.input.units]).toEqual([['RO1 light steady', 'RO1 light off'], ['RO1-A']]);
  });

  test('in a column of units, or alone before a message, is no pair either', async () => {
    const table = await readText(
      'x.csv',
      `time,unit,message\n${stamp},WARN,partner ready\n${stamp},RO1,partner ready\n`,
    );
    expect([said(table), table.input.rows.unmatched]).toEqual([['RO1 partner-ready yes'], 1]);
    const any = 'units: [{ pattern: "^(?<pair>.+)$" }]\n';
    const own = await readText('x.csv', `time,unit,message\n${stamp},ERROR,partner ready\n`, {
      phrasebook: any,
    });
    expect(said(own)).toEqual([]);
  });

  test('that is only the begin of a name is part of it', async () => {
    const file = await readText('x.log', `${stamp} INFO1-A light steady\n${stamp} ALERTS2-A light off\n`);
    expect(file.input.units).toEqual(['INFO1-A', 'ALERTS2-A']);
  });
});
