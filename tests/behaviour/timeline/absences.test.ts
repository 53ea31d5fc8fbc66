import { describe, expect, test } from 'vitest';
import { clockOf, factsOfPair } from '../../support/pair-facts.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';

describe('a spell without a partner', () => {
  const absences = async (...lines: readonly string[]): Promise<readonly string[]> =>
    (await factsOfPair([...begin, '10:00:00 RO1 partner present', ...lines, end])).absences.map(
      ({ gone, back }) => `${clockOf(gone.time)} ${back === null ? 'not back' : clockOf(back.time)}`,
    );
  const gone = '10:10:00 RO1 partner absent';
  const again = '10:12:00 RO1 partner present';

  test('is of no known module where no work on a half explains it, whatever else happened then', async () => {
    expect(await absences(gone, again)).toEqual(['10:10:00 10:12:00']);
    expect(await absences(gone)).toEqual(['10:10:00 not back']);
    expect(await absences(gone, '10:10:30 RO1 B link a down', '10:11:00 RO1 B fault', again)).toEqual([
      '10:10:00 10:12:00',
    ]);
  });

  test('is explained by work on a half from half a minute before it to half a minute after', async () => {
    for (const work of [
      'module removed',
      'module inserted',
      'module restart',
      'reflash start',
      'reflash end',
    ])
      expect(await absences(gone, `10:11:00 RO1 B ${work}`, again)).toEqual([]);
    expect(await absences('10:09:30 RO1 B module restart', gone, again)).toEqual([]);
    expect(await absences('10:09:29.999 RO1 B module restart', gone, again)).toEqual(['10:10:00 10:12:00']);
    expect(await absences(gone, again, '10:12:30 RO1 B module restart')).toEqual([]);
    expect(await absences(gone, again, '10:12:30.001 RO1 B module restart')).toEqual(['10:10:00 10:12:00']);
  });
});
