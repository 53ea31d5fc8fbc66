import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { journalCsv, messagesOf, readingsCsv, textLog } from '../../samples/exports.ts';
import { cleanSwap } from '../../samples/stories/clean-swap.ts';
import { plain } from '../../samples/wordings.ts';
import { analyseTexts, readText } from '../support/read-text.ts';

const stamp = { form: 'iso-offset', zone: 'UTC', decimals: 3 } as const;
const style = { spacingSeconds: 60, phaseSeconds: 3, stamp, delimiter: ',', wording: plain };
const story = cleanSwap();
const poll = readingsCsv(story, style);
const log = textLog(messagesOf(story, plain), stamp);
const journal = journalCsv(messagesOf(story, plain), ['time', 'unit', 'message'], ',', stamp);

const events = async (files: Readonly<Record<string, string>>): Promise<unknown> =>
  (await analyseTexts(files)).timelines.map((t) =>
    t.events.map(({ time, earliest, half, signal, value }) => ({ time, earliest, half, signal, value })),
  );

describe('rows', () => {
  test('of any table add up to the rows read', async () => {
    const cell = fc.constantFrom(
      'RO1',
      'RO1-A',
      '??',
      'light',
      'steady',
      'purple',
      '',
      'partner-ready',
      'yes',
      '"x',
      '2026-03-14 10:00:00Z',
      '31/31/2026',
    );
    const row = fc.array(cell, { minLength: 1, maxLength: 5 });
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 30 }), async (rows) => {
        const good = '2026-03-14 10:00:00Z,RO1-A,light,off';
        const text = `time,unit,parameter,value\n${good}\n${rows.map((r) => r.join(',')).join('\n')}\n`;
        const { rows: counts } = (await readText('poll.csv', text)).input;
        const { read, ...parts } = counts;
        expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBe(read);
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  test('give the same whatever the size of the chunks', async () => {
    const whole = await readText('poll.csv', poll);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 3_000 }), async (chunk) => {
        const cut = await readText('poll.csv', poll, { chunk });
        expect(cut.changes).toEqual(whole.changes);
        expect(cut.input).toEqual(whole.input);
      }),
      { numRuns: 12, seed: 2 },
    );
  });

  test('given twice, in any order of the files, change nothing', async () => {
    const once = await events({ 'a.csv': poll, 'b.log': log, 'c.csv': journal });
    expect(await events({ 'c.csv': journal, 'b.log': log, 'a.csv': poll })).toEqual(once);
    expect(
      await events({ 'a.csv': poll, 'a2.csv': poll, 'b.log': log, 'b2.log': log, 'c.csv': journal }),
    ).toEqual(once);
  });

  test('shuffled, in tables and in texts, change nothing', async () => {
    const shuffled = (text: string, keys: readonly number[], header: number): string => {
      const lines = text.trimEnd().split('\n');
      const body = lines.slice(header).map((line, index) => ({ line, key: keys[index % keys.length] ?? 0 }));
      return `${[...lines.slice(0, header), ...body.sort((a, b) => a.key - b.key).map((b) => b.line)].join('\n')}\n`;
    };
    const plainly = await events({ 'a.csv': poll, 'b.log': log, 'c.csv': journal });
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer(), { minLength: 97, maxLength: 211 }), async (keys) => {
        const files = {
          'a.csv': shuffled(poll, keys, 1),
          'b.log': shuffled(log, keys, 0),
          'c.csv': shuffled(journal, keys, 1),
        };
        expect(await events(files)).toEqual(plainly);
      }),
      { numRuns: 10, seed: 3 },
    );
  });

  test('split over two files give what the whole gives', async () => {
    const lines = log.trimEnd().split('\n');
    const [first, second] = [lines.slice(0, 50), lines.slice(50)].map((part) => `${part.join('\n')}\n`);
    expect(await events({ 'a.log': first ?? '', 'b.log': second ?? '' })).toEqual(
      await events({ 'whole.log': log }),
    );
  });
});
