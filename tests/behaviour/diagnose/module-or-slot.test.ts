import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

/** Half A active with a serial of its own, half B standby. */
const pair = (name: string): readonly string[] => [
  `06:00:00 ${name} A role active`,
  `06:00:00 ${name} A serial ${name}-A`,
  `06:00:00 ${name} B role standby`,
  `06:00:00 ${name} partner not ready`,
];
/** A module that comes into half B at a full hour. */
const comes = (name: string, serial: string, hour: string): readonly string[] => [
  `${hour}:00:00 ${name} B module inserted`,
  `${hour}:00:00 ${name} B serial ${serial}`,
];
const goes = (name: string, hour: string): readonly string[] => [
  `${hour}:50:00 ${name} B module removed`,
  `${hour}:50:00 ${name} partner not ready`,
];
/** It was ready until it was pulled ten minutes before the next, or to the end of the log. */
const works = (name: string, serial: string, hour: string, isLast = false): readonly string[] => [
  ...comes(name, serial, hour),
  `${hour}:02:00 ${name} partner ready`,
  ...(isLast ? [] : goes(name, hour)),
];
/** Its synchronisation failed twice. */
const fails = (name: string, serial: string, hour: string, isLast = false): readonly string[] => [
  ...comes(name, serial, hour),
  ...['10', '20'].flatMap((m) => [
    `${hour}:${m}:00 ${name} B sync start`,
    `${hour}:${m}:50 ${name} B sync failed`,
  ]),
  ...(isLast ? [] : goes(name, hour)),
];

async function diagnosed(...stories: readonly (readonly string[])[]): Promise<Diagnosis> {
  const lines = [
    ...pair('RO1'),
    ...pair('RO2'),
    ...pair('RO3'),
    ...stories.flat(),
    '11:30:00 RO1 A light off',
    '11:30:00 RO2 A light off',
  ];
  return diagnose(await analyseTexts({ 'site.log': journalText(lines.sort().join('\n')) }), 'RO1');
}
const told = ({ causes, doubted }: Diagnosis, id: string): unknown => {
  const listed = causes.find((c) => c.id === id);
  return listed === undefined
    ? doubted.find((d) => d.id === id)?.against.map((p) => p.statement)
    : [listed.decibans, ...listed.for.map((p) => p.statement)];
};

describe('a module that fails in two places where others are ready', () => {
  const story = [
    works('RO2', 'T4-8', '06'),
    fails('RO2', 'T4-1', '07'),
    works('RO2', 'T4-8', '09', true),
    works('RO1', 'T4-9', '06'),
    fails('RO1', 'T4-1', '08', true),
    // A third pair, where it never was, counts neither way.
    works('RO3', 'T4-6', '06', true),
  ];
  test('is what the trouble follows: it failed four times and never was ready, others three times were', async () => {
    // Fisher: 1 of C(7, 4) = 35 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 35 is 3.62 to 1, 5.6 decibans.
    expect(told(await diagnosed(...story), 'follows-module')).toEqual([
      5.6,
      'Module T4-1 failed 4, ready 0 in RO1 half B and RO2 half B; other modules there failed 0, ready 3.',
    ]);
  });
  test('rests on the lines that say which module was where', async () => {
    const found = (await diagnosed(...story)).causes.find((c) => c.id === 'follows-module');
    for (const { text } of found?.for[0].evidence ?? []) expect(text).toMatch(/ serial T4-[189]$/);
    expect(found?.for[0].evidence.length).toBeGreaterThan(2);
  });
  test('is not what the trouble follows where others fail there as well', async () => {
    const all = [
      fails('RO2', 'T4-8', '06'),
      fails('RO2', 'T4-1', '07'),
      works('RO2', 'T4-7', '09', true),
      fails('RO1', 'T4-9', '06'),
      fails('RO1', 'T4-1', '08', true),
    ];
    expect(told(await diagnosed(...all), 'follows-module')).toEqual([
      'Module T4-1 failed 4, ready 0 in RO1 half B and RO2 half B; other modules there failed 4, ready 1.',
    ]);
  });
  test('says nothing of the slot: only one of its modules failed in it', async () => {
    expect(told(await diagnosed(...story), 'follows-slot')).toEqual([
      'Only one of its modules failed in it, half B, so slot and module cannot be told apart by it.',
    ]);
  });
  test('is not told from its slot where it failed in one place only, or was seen in one only', async () => {
    expect(
      told(
        await diagnosed(
          works('RO2', 'T4-1', '06'),
          works('RO2', 'T4-8', '07', true),
          fails('RO1', 'T4-1', '08', true),
        ),
        'follows-module',
      ),
    ).toEqual(['Module T4-1 failed in RO1 half B only, so module and slot cannot be told apart by it.']);
    expect(told(await diagnosed(fails('RO1', 'T4-1', '08', true)), 'follows-module')).toEqual([
      'Module T4-1 was seen in RO1 half B only, so module and slot cannot be told apart by it.',
    ]);
  });
});

describe('a slot in which two modules fail that are ready elsewhere', () => {
  const story = [
    works('RO2', 'T4-1', '06'),
    works('RO2', 'T4-2', '07'),
    works('RO2', 'T4-7', '08', true),
    works('RO1', 'T4-5', '06'),
    fails('RO1', 'T4-1', '08'),
    fails('RO1', 'T4-2', '09', true),
  ];
  test('is what the trouble follows; a module that did not fail in it does not count', async () => {
    // Fisher: 1 of C(6, 2) = 15 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 15 is 2.04 to 1, 3.1 decibans.
    expect(told(await diagnosed(...story), 'follows-slot')).toEqual([
      3.1,
      'With 2 modules half B failed 4, ready 0; the same modules elsewhere failed 0, ready 2.',
    ]);
  });
  test('is not told from the module where only one was seen in it', async () => {
    expect(told(await diagnosed(fails('RO1', 'T4-1', '08', true)), 'follows-slot')).toEqual([
      'Only one module was seen in it, half B, so slot and module cannot be told apart by it.',
    ]);
  });
  test('is not suspected where the same modules fail elsewhere too', async () => {
    const found = await diagnosed(fails('RO2', 'T4-1', '06'), fails('RO2', 'T4-2', '07'), ...story.slice(2));
    expect(told(found, 'follows-slot')).toEqual([
      'With 2 modules half B failed 4, ready 0; the same modules elsewhere failed 4, ready 0.',
    ]);
  });
});
