import { describe, expect, test } from 'vitest';
import { firmwareWide } from '../../../src/diagnose/firmware-wide.ts';
import { checkCause, diagnoseCase } from '../../support/check-cause.ts';
import { journalText } from '../../support/read-text.ts';

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

/** Three pairs with the firmware that lose their partner once, and so many without it, of which so many lose it as well. */
const fleet = (withIt: number, without: number, alsoLost = 0): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Array.from({ length: withIt + without }, (_, place) => {
      const isWith = place < withIt;
      const isLost = isWith || place < withIt + alsoLost;
      const name = `RO${place + 2}`;
      return [
        `${name}.log`,
        pair(name, isWith ? '6.4.1' : '6.2.0', ...(isLost ? loss(`06:${20 + place}`) : [])),
      ];
    }),
  );

checkCause(firmwareWide, {
  shows: {
    name: 'three of three others with it had trouble, none of three without it',
    files: fleet(3, 3),
    // Fisher: 1 of C(6, 3) = 20 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 20 is 2.46 to 1, 3.9 decibans and 7. The lower limit of the
    // rates: 0.025^(1/3) is 0.2924, and 0.2924 / 0.7076 is 0.4.
    decibans: 10.9,
    for: [
      'Other pairs that lost their partner or failed to synchronise: with firmware 6.4.1 3 of 3, 3 bouts in 6 h 00 min; with another 0 of 3, 0 bouts in 6 h 00 min. The rate is higher by a factor from 0.4 without an upper limit.',
    ],
  },
  lookAlike: {
    name: 'pairs with other firmware have as much trouble',
    files: fleet(3, 3, 3),
    instead: 'too-little-data',
  },
  tooLittle: { name: 'the files speak of one pair', names: 'load' },
});

test('one pair less on either side is too few', async () => {
  const weight = async (files: Readonly<Record<string, string>>): Promise<number | null | undefined> =>
    (await diagnoseCase({ name: '', files })).causes.find((c) => c.id === firmwareWide.meta.id)?.decibans;
  // Two and three, or three and two: 1 of C(5, 2) = 10 ways. 1.60 to 1, 2.0 decibans and 7.
  expect(await weight(fleet(2, 3))).toBe(9);
  expect(await weight(fleet(3, 2))).toBe(9);
  // Two and four, four and two: 1 of C(6, 2) = 15 ways. 2.04 to 1, 3.1 decibans and 7.
  expect(await weight(fleet(2, 4))).toBe(10.1);
  expect(await weight(fleet(4, 2))).toBe(10.1);
});

describe('the failures of other pairs', () => {
  test('losses of one pair within twelve hours are one bout', async () => {
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
    expect(point?.statement).toContain('with firmware 6.4.1 1 of 1, 1 bout in 2 h 00 min;');
  });

  const said = async (files: Readonly<Record<string, string>>): Promise<string | undefined> => {
    const { causes, doubted } = await diagnoseCase({ name: '', files });
    const points = causes.find((c) => c.id === firmwareWide.meta.id)?.for;
    return (points ?? doubted.find((d) => d.id === firmwareWide.meta.id)?.against)?.[0]?.statement;
  };

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
    // With 6.4.1: two hours of RO2 and one of RO3, a bout each; with 6.2.0: one hour of RO3, one bout. RO3 had each for an hour. The exact
    // limits of 2 against 1: 0.0943 and 0.9916 of the three (Clopper and Pearson), so 0.1041 / 3 and 118.0 / 3.
    expect(await said(files)).toBe(
      'Other pairs that lost their partner or failed to synchronise: with firmware 6.4.1 2 of 2, 2 bouts in 3 h 00 min; with another 0 of 0, 1 bout in 1 h 00 min. The rate is 0.7 times as high, 95 % from 0.0 to 39.3.',
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
    // Of two in four hours against none in two: 0.025^(1/2) is 0.1581, and 0.1878 / 2 is 0.1.
    expect(await said(files)).toBe(
      'Other pairs that lost their partner or failed to synchronise: with firmware 6.4.1 2 of 2, 2 bouts in 4 h 00 min; with another 0 of 1, 0 bouts in 2 h 00 min. The rate is higher by a factor from 0.1 without an upper limit.',
    );
  });

  test('are not spoken of where there is no other pair', async () => {
    expect(await said({})).toBe('There is no other pair in the files.');
  });

  test('are looked for while the half with it is standby', async () => {
    const taken = ['07:00:00 RO A role standby', '07:00:00 RO B role active'];
    expect(await said({ 'ro2.log': pair('RO2', '6.2.0', ...taken) })).toBe(
      'Other pairs that lost their partner or failed to synchronise: with firmware 6.4.1 0 of 1, 0 bouts in 1 h 00 min; with another 0 of 0, 0 bouts in 1 h 00 min.',
    );
  });

  const often = (name: string, firmware: string, count: number): string =>
    pair(name, firmware, ...Array.from({ length: count }, (_, index) => loss(`06:${10 + index * 4}`)).flat());

  test('do not speak for it more where each comes again and again within hours: that is one bout', async () => {
    const files = {
      'ro2.log': often('RO2', '6.4.1', 6),
      'ro3.log': often('RO3', '6.4.1', 6),
      'ro4.log': pair('RO4', '6.2.0'),
      'ro5.log': pair('RO5', '6.2.0'),
    };
    // Fisher: 1 of C(4, 2) = 6 ways. 1.23 to 1, 0.9 decibans and 7.
    const found = (await diagnoseCase({ name: '', files })).causes.find((c) => c.id === firmwareWide.meta.id);
    expect(found?.decibans).toBe(7.9);
    expect(found?.for.map((p) => p.statement)[0]).toContain(
      'with firmware 6.4.1 2 of 2, 2 bouts in 4 h 00 min;',
    );
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
      'with firmware 6.4.1 1 of 1, 1 bout in 2 h 00 min; with another 0 of 2, 0 bouts in 4 h 00 min.',
    );
  });
});
