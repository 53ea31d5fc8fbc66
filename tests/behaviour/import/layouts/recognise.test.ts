import { describe, expect, test } from 'vitest';
import { readText } from '../../../support/read-text.ts';

const layoutOf = async (header: string, ...cells: readonly string[]): Promise<string> =>
  (await readText('x.csv', `time,unit,${header}\n2026-03-14 10:00:00Z,RO1-A,${cells.join(',')}\n`)).input
    .layout;

describe('a table that several layouts could read', () => {
  test('is read by the one that needs more of its columns', async () => {
    // Readings need two columns (parameter, value), a journal one (message), snapshots none.
    expect(await layoutOf('parameter,value,message,light', 'light', 'off', 'light off', 'off')).toBe(
      'readings',
    );
    expect(await layoutOf('message,light', 'light off', 'off')).toBe('journal');
    expect(await layoutOf('light', 'off')).toBe('snapshots');
  });
});
