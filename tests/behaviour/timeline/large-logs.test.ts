import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import { analyseTexts } from '../../support/read-text.ts';

const count = 6000;
const begin = Date.UTC(2026, 4, 1);

function journal(rows: readonly (readonly [number, string, string])[]): string {
  const lines = rows.map(([s, unit, what]) => `${new Date(begin + s * 1000).toISOString()},${unit},${what}`);
  return `time,unit,message\n${lines.join('\n')}\n`;
}

const start = [
  [0, 'P1-A', 'role active'],
  [0, 'P1-B', 'role standby'],
  [1, 'P1', 'partner ready'],
  [100, 'P1', 'partner not ready'],
] as const;
const flaps = (after: number): readonly (readonly [number, string, string])[] =>
  Array.from({ length: count }, (_, i) => [after + i * 5, 'P1-B', i % 2 === 0 ? 'link a down' : 'link a up']);

describe('a log of thousands of changes is diagnosed in seconds', () => {
  test('two clocks, 3 s apart, saw every one of them', { timeout: 10_000 }, async () => {
    const { findings } = await analyseTexts({
      'a.csv': journal([...start, ...flaps(120)]),
      'b.csv': journal(flaps(123)),
    });
    const offset = findings.find((f) => f.id === 'clock-offset');
    expect([offset?.figures.aheadSeconds, offset?.figures.count]).toEqual([3, count]);
  });
  test('the same synchronisation fails thousands of times', { timeout: 10_000 }, async () => {
    const failures = Array.from({ length: count }, (_, i) => [
      [120 + i * 60, 'P1-B', 'sync start'] as const,
      [150 + i * 60, 'P1-B', 'sync failed'] as const,
    ]).flat();
    const { causes, attempts } = diagnose(
      await analyseTexts({ 'a.csv': journal([...start, ...failures]) }),
      'P1',
    );
    expect([causes[0]?.id, attempts.length]).toEqual(['aborts-at-fixed-time', count]);
  });
});
