import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { fails, moduleJournal, works } from '../../support/module-journals.ts';
import { analyseTexts } from '../../support/read-text.ts';

async function diagnosed(...stories: readonly (readonly string[])[]): Promise<Diagnosis> {
  return diagnose(await analyseTexts({ 'site.log': moduleJournal('RO1', ...stories) }), 'RO1');
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
    // Fisher: 1 of C(7, 4) = 35 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 35 is 3.62 to 1, 5.6 decibans; 10 for the swap test.
    expect(told(await diagnosed(...story), 'follows-module')).toEqual([
      15.6,
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
      'Only one of its modules failed in it, half B, so slot and module cannot be separated by it.',
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
    ).toEqual(['Module T4-1 failed in RO1 half B only, so module and slot cannot be separated by it.']);
    expect(told(await diagnosed(fails('RO1', 'T4-1', '08', true)), 'follows-module')).toEqual([
      'Module T4-1 was seen in RO1 half B only, so module and slot cannot be separated by it.',
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
    // Fisher: 1 of C(6, 2) = 15 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 15 is 2.04 to 1, 3.1 decibans; 10 for the swap test.
    expect(told(await diagnosed(...story), 'follows-slot')).toEqual([
      13.1,
      'With 2 modules half B failed 4, ready 0; the same modules elsewhere failed 0, ready 2.',
    ]);
  });
  test('is not told from the module where only one was seen in it', async () => {
    expect(told(await diagnosed(fails('RO1', 'T4-1', '08', true)), 'follows-slot')).toEqual([
      'Only one module was seen in it, half B, so slot and module cannot be separated by it.',
    ]);
  });
  test('is not suspected where the same modules fail elsewhere too', async () => {
    const found = await diagnosed(fails('RO2', 'T4-1', '06'), fails('RO2', 'T4-2', '07'), ...story.slice(2));
    expect(told(found, 'follows-slot')).toEqual([
      'With 2 modules half B failed 4, ready 0; the same modules elsewhere failed 4, ready 0.',
    ]);
  });
});

describe('the least of a swap test', () => {
  const weight = async (id: string, ...stories: readonly (readonly string[])[]): Promise<unknown> => {
    const found = (await diagnosed(...stories)).causes.find((c) => c.id === id);
    return found?.decibans ?? 'doubted';
  };

  test('of a module: it failed in two places, and in each another was ready when last tried there', async () => {
    const story = [
      works('RO2', 'T4-8', '06'),
      fails('RO2', 'T4-1', '07', false, ['10']),
      works('RO1', 'T4-9', '06'),
      fails('RO1', 'T4-1', '08', true, ['10']),
    ];
    // Fisher: 1 of C(4, 2) = 6 ways. 1 / (e * p * ln(1 / p)) with p = 1 / 6 is 1.23 to 1, 0.9 decibans and 10.
    expect(await weight('follows-module', ...story)).toBe(10.9);
    // The other module was ready in RO2 first and failed there afterwards.
    const again = fails('RO2', 'T4-8', '09', true, ['10']);
    expect(await weight('follows-module', ...story, again)).toBe('doubted');
    // No other module was ever tried in RO2: Fisher over two and one is 1 of 3 ways, 1.0 to 1.
    expect(await weight('follows-module', ...story.slice(1))).toBe('doubted');
    // It was ready once since it had failed: 2 of 3 against 0 of 2 are 3 of 10 ways.
    const ready = works('RO3', 'T4-1', '10', true);
    expect(
      await weight('follows-module', ...story.slice(0, 3), fails('RO1', 'T4-1', '08', true, ['10']), ready),
    ).toBe('doubted');
  });

  test('of a module leaves out what it did before it first failed', async () => {
    const story = [
      works('RO3', 'T4-1', '06'),
      works('RO2', 'T4-8', '06'),
      fails('RO2', 'T4-1', '07', false, ['10']),
      works('RO1', 'T4-9', '06'),
      fails('RO1', 'T4-1', '08', true, ['10']),
    ];
    expect(await weight('follows-module', ...story)).toBe(10.9);
  });

  test('of a slot: two modules failed in it that were ready elsewhere when last tried there', async () => {
    const story = [
      works('RO2', 'T4-1', '06'),
      works('RO3', 'T4-2', '06'),
      works('RO1', 'T4-5', '06'),
      fails('RO1', 'T4-1', '08', false, ['10']),
      fails('RO1', 'T4-2', '09', true, ['10']),
    ];
    expect(await weight('follows-slot', ...story)).toBe(10.9);
    // One of them failed elsewhere afterwards, or was never seen elsewhere.
    const failed = fails('RO2', 'T4-1', '10', true, ['10']);
    expect(await weight('follows-slot', ...story, failed)).toBe('doubted');
    expect(await weight('follows-slot', ...story.slice(1))).toBe('doubted');
  });

  test('of a slot leaves out what it did before the trouble: its own module was ready in it then', async () => {
    const story = [
      works('RO1', 'T4-1', '06'),
      works('RO2', 'T4-1', '07', true),
      works('RO3', 'T4-2', '06'),
      fails('RO1', 'T4-1', '08', false, ['10']),
      fails('RO1', 'T4-2', '09', true, ['10']),
    ];
    expect(await weight('follows-slot', ...story)).toBe(10.9);
  });
});
