import { describe, expect, test } from 'vitest';
import { journalCsv, messagesOf, readingsCsv } from '../../../samples/exports.ts';
import { cleanSwap } from '../../../samples/stories/clean-swap.ts';
import { plain } from '../../../samples/wordings.ts';
import { analyse, verify } from '../../../src/pipeline.ts';
import type { TimelineEvent } from '../../../src/vocabulary.ts';
import { readTexts } from '../../support/read-text.ts';

const stamp = { form: 'iso-offset', zone: 'UTC', decimals: 3 } as const;
const story = cleanSwap();
const poll = (phaseSeconds: number): string =>
  readingsCsv(story, { spacingSeconds: 10, phaseSeconds, stamp, delimiter: ',', wording: plain });
const columns = ['time', 'unit', 'message'];
const journal = (seconds: number): string =>
  journalCsv(
    messagesOf(story, plain).map((m) => ({ ...m, time: m.time + seconds * 1000 })),
    columns,
    ',',
    stamp,
  );

const offsetsOf = async (
  files: Readonly<Record<string, string>>,
  reference: string | null = null,
): Promise<readonly unknown[]> =>
  analyse(await readTexts(files), undefined, { align: false, reference })
    .findings.filter((f) => f.id === 'clock-offset')
    .map((f) => [f.severity, f.figures.aheadSeconds, f.figures.count]);

describe('clocks', () => {
  test('37 s apart: two journals to the millisecond, a poll within one spacing', async () => {
    expect(await offsetsOf({ 'a.csv': journal(0), 'b.csv': journal(37) })).toEqual([
      ['warning', 37, expect.any(Number)],
    ]);
    const [found] = await offsetsOf({ 'journal.csv': journal(37), 'poll.csv': poll(3) });
    const [severity, ahead] = Array.isArray(found) ? found : [];
    expect(severity).toBe('warning');
    expect(Math.abs(ahead - -37)).toBeLessThanOrEqual(10);
  });

  test('that agree are told, and not warned of', async () => {
    const found = await offsetsOf({ 'journal.csv': journal(0), 'poll.csv': poll(3) });
    expect(found).toHaveLength(1);
    expect(JSON.stringify(found)).toContain('"info"');
  });

  test('of files that follow each other have no offset', async () => {
    const lines = journal(0).trimEnd().split('\n');
    const part = (rows: readonly string[]): string => `${[lines[0], ...rows].join('\n')}\n`;
    expect(await offsetsOf({ 'a.csv': part(lines.slice(1, 45)), 'b.csv': part(lines.slice(45)) })).toEqual(
      [],
    );
  });

  test('a poll whose clock is off is used all the same; aligned, both together are tighter than the poll alone', async () => {
    const polls = { 'a.csv': poll(2), 'journal.csv': journal(37), 'b.csv': poll(7) };
    const imported = await readTexts(polls);
    const files = (align: boolean): readonly string[] => {
      const { timelines } = analyse(imported, undefined, { align, reference: null });
      return [
        ...new Set(timelines.flatMap((t) => t.events.flatMap((e) => e.sources.map((s) => s.file)))),
      ].sort();
    };
    for (const align of [false, true]) expect(files(align)).toEqual(['a.csv', 'b.csv', 'journal.csv']);
    const width = async (texts: Readonly<Record<string, string>>): Promise<number> => {
      const analysed = analyse(await readTexts(texts), undefined, { align: true, reference: null });
      const settled = verify(analysed, null, { from: null, to: null }, null).swaps.flatMap((s) =>
        s.bringUps.filter((b) => b.outcome === 'settled'),
      );
      expect(settled).toHaveLength(2);
      return settled.reduce((sum, b) => sum + (b.light.high ?? 0) - (b.light.low ?? 0), 0);
    };
    expect(await width({ 'a.csv': poll(2), 'journal.csv': journal(37) })).toBeLessThan(
      await width({ 'a.csv': poll(2) }),
    );
  });

  describe.each([1, 2, 3, 4, 5])(
    'of two polls 37 s apart that drift against each other, from phase %i s on',
    (phase) => {
      const one = (ahead: number): string => drifting(10, phase, ahead);
      const two = (ahead: number): string => drifting(9.7, 2, ahead);

      test('are found within one spacing', async () => {
        const [found] = await offsetsOf({ 'one.csv': one(0), 'two.csv': two(37) }, 'one.csv');
        const [severity, ahead] = Array.isArray(found) ? found : [];
        expect(severity).toBe('warning');
        expect(Math.abs(ahead - 37)).toBeLessThanOrEqual(10);
      });

      test('and aligned, both together are tighter than either alone and still hold the truth', async () => {
        const together = await boundsOf({ 'one.csv': one(0), 'two.csv': two(37) });
        const width = (bounds: ReadonlyMap<string, Bounds>): number =>
          [...together.keys()].reduce((sum, key) => sum + widthOf(bounds.get(key)), 0);
        expect(together.size).toBeGreaterThan(20);
        expect(width(together)).toBeLessThan(width(await boundsOf({ 'one.csv': one(0) })));
        expect(width(together)).toBeLessThan(width(await boundsOf({ 'two.csv': two(0) })));
        const lit = [...together].filter(([key]) => key.includes(' light '));
        expect(lit.length).toBeGreaterThan(5);
        for (const [key, { earliest, time }] of lit) {
          const isIt = (e: (typeof story.events)[number]): boolean =>
            key.startsWith(`${e.half} ${e.signal} ${e.value} `) && e.time >= earliest && e.time <= time;
          expect(story.events.some(isIt), key).toBe(true);
        }
      });
    },
  );
});

type Bounds = Pick<TimelineEvent, 'earliest' | 'time'>;

function drifting(spacingSeconds: number, phaseSeconds: number, aheadSeconds: number): string {
  const style = { spacingSeconds, phaseSeconds, delimiter: ',', wording: plain };
  return readingsCsv(story, { ...style, stamp: { ...stamp, aheadSeconds } });
}

/** The bounds of every change that two readings bracket, by what changed, and how often it had before. */
async function boundsOf(files: Readonly<Record<string, string>>): Promise<ReadonlyMap<string, Bounds>> {
  const { timelines } = analyse(await readTexts(files), undefined, { align: true, reference: 'one.csv' });
  const seen = new Map<string, number>();
  const found = new Map<string, Bounds>();
  for (const event of timelines.flatMap((t) => [...t.events])) {
    if (event.initial || event.earliest === event.time) continue;
    const key = `${event.half} ${event.signal} ${event.value}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
    found.set(`${key} ${seen.get(key)}`, event);
  }
  return found;
}

function widthOf(bounds: Bounds | undefined): number {
  return bounds === undefined ? Number.NaN : bounds.time - bounds.earliest;
}
