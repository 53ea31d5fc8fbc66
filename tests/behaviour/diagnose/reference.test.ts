import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import { diagnoseCase } from '../../support/check-cause.ts';
import { at } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

describe('what the attempts are compared with', () => {
  const begin = (name: string, model: string, firmware: string | null = '6.4.1'): readonly string[] => [
    `06:00:00 ${name} A role active`,
    `06:00:00 ${name} B role standby`,
    `06:00:00 ${name} B model ${model}`,
    ...(firmware === null ? [] : [`06:00:00 ${name} B firmware ${firmware}`]),
    `06:00:00 ${name} partner ready`,
  ];
  const worked = (name: string, hour: string): readonly string[] => [
    `${hour}:00:00 ${name} B module restart`,
    `${hour}:00:00 ${name} partner not ready`,
    `${hour}:02:00 ${name} partner ready`,
  ];
  const failing = [
    '10:00:00 RO1 B module restart',
    '10:00:00 RO1 partner not ready',
    '10:05:00 RO1 B sync failed',
    '10:30:00 RO1 A light off',
  ];
  const reference = async (
    hours: readonly string[],
    firmware: string | null = '6.4.1',
    ...more: readonly string[]
  ): Promise<readonly unknown[]> => {
    const lines = [
      ...begin('RO1', 'Tern-4', firmware),
      ...more,
      ...hours.flatMap((hour) => worked('RO1', hour)),
      ...failing,
    ];
    const other = [...begin('RO2', 'Tern-2'), ...worked('RO2', '08'), '10:30:00 RO2 A light off'];
    const files = {
      'a.log': journalText([...lines].sort().join('\n')),
      'b.log': journalText(other.join('\n')),
    };
    const found = diagnose(await analyseTexts(files), 'RO1').reference;
    return [found.sameModule, ...found.bands.map((b) => b.count)];
  };

  test('are those of the same model and firmware that worked, from three on; else all', async () => {
    // Each was identified by its model and firmware until it was ready.
    expect(await reference(['07', '08', '09'])).toEqual([true, 3]);
    expect(await reference(['07', '08'])).toEqual([false, 3]);
    // A partner that came back by itself after a loss is none that worked.
    const back = ['09:30:00 RO1 partner not ready', '09:31:00 RO1 partner ready'];
    expect(await reference(['07', '08'], '6.4.1', ...back)).toEqual([false, 3]);
    // Another firmware since then, or none that is known: with that of RO2 there are four.
    expect(await reference(['07', '08', '09'], '6.2.0', '09:30:00 RO1 B firmware 6.4.1')).toEqual([false, 4]);
    expect(await reference(['07', '08', '09'], null)).toEqual([false, 4]);
  });
});

test('the staff begins a tenth of its length before the trouble', async () => {
  // Trouble from 07:00 to 08:00: six minutes and forty seconds are a tenth of 66:40.
  const { staff } = await diagnoseCase({ name: '' });
  expect([staff.from, staff.to]).toEqual([at('06:53:20'), at('08:00:00')]);
  const { staff: early } = await diagnoseCase({
    name: '',
    plus: ['06:00:30  RO1    partner not ready'],
    without: ['07:00:00  RO1    partner'],
  });
  expect(early.from).toBe(at('06:00:00'));
});
