import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const begin = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 partner ready',
  '10:00:00 RO1 B light steady',
];
const end = '10:30:00 RO1 A light off';
const lost = '10:10:00 RO1 partner not ready';
const restart = '10:10:00 RO1 B module restart';

async function diagnosed(lines: readonly string[], pair: string | null = null): Promise<Diagnosis> {
  return diagnose(await analyseTexts({ 'a.log': journalText([...lines].sort().join('\n')) }), pair);
}

describe('without a name', () => {
  const pair = (name: string, ...lines: readonly string[]): readonly string[] =>
    [...begin, ...lines, end].map((line) => line.replace('RO1', name));
  const chosen = async (...pairs: readonly (readonly string[])[]): Promise<string | null> =>
    (await diagnosed(pairs.flat())).chosen;

  test('the pair without a ready partner is taken, the longest first, before one with another trouble', async () => {
    const late = [restart, lost, '10:10:00 RO1 B light flashing', '10:12:00 RO1 partner ready'];
    expect(await chosen(pair('RO1'), pair('RO2', lost), pair('RO3', '10:05:00 RO1 partner not ready'))).toBe(
      'No pair was named: of 3 pairs, 1 healthy, RO3 is the worst now: no partner has stayed ready.',
    );
    expect(await chosen(pair('RO1', ...late), pair('RO2', '10:20:00 RO1 partner not ready'))).toBe(
      'No pair was named: of 2 pairs, 0 healthy, RO2 is the worst now: no partner has stayed ready.',
    );
    expect(await chosen(pair('RO1', ...late), pair('RO2'))).toBe(
      'No pair was named: of 2 pairs, 1 healthy, RO1 is the worst now: its light was not steady in time.',
    );
  });

  test('the only pair is taken', async () => {
    expect(await chosen(pair('RO1', lost))).toBe('RO1 is the only pair in the files.');
    expect(await chosen(pair('RO1'))).toBe('RO1 is the only pair in the files.');
    expect((await diagnosed(pair('RO1', lost), 'RO1')).chosen).toBeNull();
  });
});
