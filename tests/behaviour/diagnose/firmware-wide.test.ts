import { describe, expect, test } from 'vitest';
import { firmwareWide } from '../../../src/diagnose/firmware-wide.ts';
import { checkCause, diagnoseCase } from '../../support/check-cause.ts';
import { firmwareFails } from '../../support/module-troubles.ts';
import { journalText } from '../../support/read-text.ts';

checkCause(firmwareWide, {
  shows: {
    name: 'two other pairs with it have trouble, two without it none',
    files: firmwareFails(41),
    alone: true,
  },
  lookAlike: {
    name: 'pairs with other firmware have as much trouble',
    files: firmwareFails(42, true),
    alone: true,
    instead: 'too-little-data',
  },
  tooLittle: { name: 'the files speak of one pair', names: 'load' },
});

describe('the failures of other pairs', () => {
  test('a loss that lasts, and one of a partner that did not hold, count once each', async () => {
    const other = journalText(`06:00:00  RO2 A  role active
      06:00:00  RO2 B  role standby
      06:00:00  RO2 A  firmware 6.4.1
      06:00:00  RO2 B  firmware 6.4.1
      06:00:00  RO2    partner ready
      06:30:00  RO2    partner not ready
      06:40:00  RO2    partner ready
      06:40:20  RO2    partner not ready
      08:00:00  RO2 A  light off`);
    const { doubted } = await diagnoseCase({ name: '', files: { 'ro2.log': other } });
    const [point] = doubted.find((d) => d.id === firmwareWide.meta.id)?.against ?? [];
    expect(point?.statement).toContain('with firmware 6.4.1 2 in 2 h 00 min, on 1 pair;');
  });

  const pair = (name: string, firmware: string, ...lines: readonly string[]): string =>
    journalText(
      [
        `06:00:00 ${name} A role active`,
        `06:00:00 ${name} B role standby`,
        `06:00:00 ${name} A firmware 6.4.1`,
        `06:00:00 ${name} B firmware ${firmware}`,
        `06:00:00 ${name} partner ready`,
        ...lines.map((line) => line.replace('RO', name)),
        `08:00:00 ${name} A light off`,
      ]
        .sort()
        .join('\n'),
    );
  const loss = (minute: string): readonly string[] => [
    `${minute}:00 RO partner not ready`,
    `${minute}:50 RO partner ready`,
  ];
  const said = async (files: Readonly<Record<string, string>>): Promise<string | undefined> =>
    (await diagnoseCase({ name: '', files })).doubted.find((d) => d.id === firmwareWide.meta.id)?.against[0]
      ?.statement;

  test('are counted by the firmware that the standby had then, against the hours that it had it', async () => {
    const reflash = [
      '06:58:00 RO B reflash start',
      '07:00:00 RO B reflash end',
      '07:00:00 RO B firmware 6.4.1',
      '06:58:00 RO partner not ready',
      '07:02:00 RO partner ready',
    ];
    const files = {
      'ro2.log': pair('RO2', '6.4.1', ...loss('06:30'), ...loss('07:00')),
      'ro3.log': pair('RO3', '6.2.0', ...loss('06:30'), ...reflash, ...loss('07:30')),
    };
    // With 6.4.1: two hours of RO2 and one of RO3, three losses; with 6.2.0: one hour of RO3, one loss. The exact limits of
    // 3 against 1: 0.1941 and 0.9937 of the four (Clopper and Pearson), so 0.2408 / 3 and 157.5 / 3.
    expect(await said(files)).toBe(
      'Losses and failed attempts of other pairs: with firmware 6.4.1 3 in 3 h 00 min, on 2 pairs; with another 1 in 1 h 00 min. The rate is 1.0 times as high, 95 % from 0.1 to 52.5.',
    );
  });

  test('with failed attempts as well as losses; without any elsewhere the factor has no upper limit', async () => {
    const failed = [
      '06:20:00 RO B module restart',
      '06:20:00 RO partner not ready',
      '06:24:00 RO B sync failed',
      '06:30:00 RO partner ready',
    ];
    const files = {
      'ro2.log': pair('RO2', '6.4.1', ...failed),
      'ro3.log': pair('RO3', '6.4.1', ...loss('06:30'), ...loss('07:00')),
      'ro4.log': pair('RO4', '6.2.0'),
    };
    // Of three in four hours against none in two: 0.025^(1/3) is 0.2924, and 0.4132 / 2 is 0.2.
    expect(await said(files)).toBe(
      'Losses and failed attempts of other pairs: with firmware 6.4.1 3 in 4 h 00 min, on 2 pairs; with another 0 in 2 h 00 min. The rate is higher by a factor from 0.2 without an upper limit.',
    );
  });

  test('are not spoken of where there is no other pair', async () => {
    expect(await said({})).toBe('The files speak of no other pair.');
  });

  test('are looked for while the half with it is standby', async () => {
    const taken = ['07:00:00 RO A role standby', '07:00:00 RO B role active'];
    expect(await said({ 'ro2.log': pair('RO2', '6.2.0', ...taken) })).toBe(
      'Losses and failed attempts of other pairs: with firmware 6.4.1 0 in 1 h 00 min, on 0 pairs; with another 0 in 1 h 00 min.',
    );
  });

  const often = (name: string, firmware: string, count: number): string =>
    pair(name, firmware, ...Array.from({ length: count }, (_, index) => loss(`06:${10 + index * 4}`)).flat());

  test('speak for it where two pairs with it lose their partner again and again, and those without never', async () => {
    const files = {
      'ro2.log': often('RO2', '6.4.1', 6),
      'ro3.log': often('RO3', '6.4.1', 6),
      'ro4.log': pair('RO4', '6.2.0'),
      'ro5.log': pair('RO5', '6.2.0'),
    };
    // Twelve of twelve in half of the time: p = 1 / 4096, and 1 / (e * p * ln(1 / p)) is 181 to 1, 22.6 decibans. The lower
    // limit: 0.025^(1/12) is 0.7354, and 0.7354 / 0.2646 is 2.8.
    const found = (await diagnoseCase({ name: '', files })).causes.find((c) => c.id === firmwareWide.meta.id);
    expect(found?.decibans).toBe(22.6);
    expect(found?.for.map((p) => p.statement)).toEqual([
      'Losses and failed attempts of other pairs: with firmware 6.4.1 12 in 4 h 00 min, on 2 pairs; with another 0 in 4 h 00 min. The rate is higher by a factor from 2.8 without an upper limit.',
    ]);
    // The last three losses of each.
    expect(found?.for[0].evidence.map(({ file, text }) => `${file} ${text.slice(11, 16)}`)).toEqual([
      'ro2.log 06:22',
      'ro2.log 06:26',
      'ro2.log 06:30',
      'ro3.log 06:22',
      'ro3.log 06:26',
      'ro3.log 06:30',
    ]);
  });

  test('do not where it is one pair only', async () => {
    const files = {
      'ro2.log': often('RO2', '6.4.1', 12),
      'ro3.log': pair('RO3', '6.2.0'),
      'ro4.log': pair('RO4', '6.2.0'),
    };
    expect(await said(files)).toContain(
      'with firmware 6.4.1 12 in 2 h 00 min, on 1 pair; with another 0 in 4 h 00 min.',
    );
  });
});
