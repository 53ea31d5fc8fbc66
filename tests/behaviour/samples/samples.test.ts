import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../../samples/random.ts';
import { sampleFiles } from '../../../samples/site.ts';

describe('the committed samples', () => {
  test.each(sampleFiles().map((f) => [f.path, f.text] as const))(
    '%s is what the generator writes',
    (path, text) => {
      expect(readFileSync(join('samples', path), 'utf8')).toBe(text);
    },
  );
  test('what was injected agrees with a plain reading of the text log: every readiness change at its instant', () => {
    const folder = join('samples', 'marrow-bay', 'clean-swap');
    const truth: {
      readonly events: readonly {
        readonly time: string;
        readonly signal: string;
        readonly value: string | null;
      }[];
    } = JSON.parse(readFileSync(join('samples', 'truth', 'clean-swap.json'), 'utf8'));
    const injected = truth.events
      .filter((e) => e.signal === 'partner-ready')
      .map((e) => `${Date.parse(e.time)} ${e.value}`);
    const lines = readFileSync(join(folder, 'ro1-events.log'), 'utf8').split('\n').slice(1);
    const read = lines
      .filter((l) => / partner (not )?ready$/.test(l))
      .map((l) => `${Date.parse(l.split(' ')[0] ?? '')} ${l.endsWith('not ready') ? 'no' : 'yes'}`);
    expect(read.slice(-injected.length)).toEqual(injected);
    expect(injected.length).toBe(4);
  });
  test('the generator of chance gives the same for the same seed, spread over 0 to 1', () => {
    const [a, b] = [seeded(7), seeded(7)];
    const numbers = Array.from({ length: 10_000 }, () => a());
    expect(Array.from({ length: 10_000 }, () => b())).toEqual(numbers);
    // Mean of 10,000 even numbers: 0.5 with a standard deviation of 1/sqrt(12 * 10,000) = 0.0029.
    expect(Math.abs(numbers.reduce((x, y) => x + y, 0) / 10_000 - 0.5)).toBeLessThan(0.0116);
  });
});
