import { describe, expect, test } from 'vitest';
import { guessLine } from '../../../../src/import/drafts/guess-line.ts';
import { compilePattern } from '../../../../src/import/phrasebook/patterns.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

/** What is said in every case, by turns: by two that say the same, so that a name can be told from a message. */
const said = [
  'twin is in step',
  'twin fell out of step',
  'copied 14 blocks',
  'took the lead',
  'copied 9 blocks',
];

interface Case {
  readonly name: string;
  /** How line `i` is written; `clock` is its `HH:MM:SS`. */
  readonly write: (i: number, clock: string, message: string) => string;
  readonly time: string;
  readonly unit: string | null;
  readonly message?: string;
}

const host = (i: number): string => (i % 3 === 0 ? 'gate-a' : 'gate-b');
const number = (i: number): number => 100 + ((i * 37) % 61);

const cases: readonly Case[] = [
  {
    name: 'a severity in brackets, a thread in parentheses, a host and a dash',
    write: (i, clock, m) =>
      `2026-03-14 ${clock},0${number(i)} [${i % 2 ? 'INFO' : 'WARN'}] (${number(i)}) ${host(i)} - ${m}`,
    time: '2026-03-14 09:00:00,0100',
    unit: 'gate-a',
  },
  {
    name: 'bars, and a severity of one letter',
    write: (i, clock, m) => `20260314-${clock} | ${i % 2 ? 'I' : 'W'} | ${host(i)} | ${m}`,
    time: '20260314-09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'a stamp in brackets',
    write: (i, clock, m) => `[2026-03-14T${clock}.5+01:00] ${host(i)}: ${m}`,
    time: '2026-03-14T09:00:00.5+01:00',
    unit: 'gate-a',
  },
  {
    name: 'a severity before the stamp',
    write: (i, clock, m) => `${i % 2 ? 'ERROR' : 'INFO '} 14/03/2026 ${clock} [${host(i)}] ${m}`,
    time: '14/03/2026 09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'a host, a program with its number',
    write: (i, clock, m) => `Mar 14 ${clock} ${host(i)} pairing[${number(i)}]: ${m}`,
    time: 'Mar 14 09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'a unit before the stamp',
    write: (i, clock, m) => `${host(i)} 2026/03/14 ${clock} ${m}`,
    time: '2026/03/14 09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'no unit at all',
    write: (_, clock, m) => `14-Mar-2026 ${clock} ${m}`,
    time: '14-Mar-2026 09:00:00',
    unit: null,
  },
  {
    name: 'no unit, and a number that changes',
    write: (i, clock, m) => `2026-03-14 ${clock} #${i} <${number(i)}> NOTICE: ${m}`,
    time: '2026-03-14 09:00:00',
    unit: null,
    message: '#0 <100> NOTICE: twin is in step',
  },
  {
    name: 'seconds since the start in brackets',
    write: (i, _, m) => `[  ${i * 31}.${String(number(i)).padStart(6, '0')}] ${m}`,
    time: '0.000100',
    unit: null,
  },
  {
    name: 'tabs without a header',
    write: (i, clock, m) => `2026-03-14 ${clock}\t${host(i)}\t${i % 2 ? 'low' : 'high'}\t${m}`,
    time: '2026-03-14 09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'semicolons without a header',
    write: (i, clock, m) => `2026-03-14 ${clock};${host(i)};${i % 2 ? 'low' : 'high'};${m}`,
    time: '2026-03-14 09:00:00',
    unit: 'gate-a',
  },
  {
    name: 'the day of the week before the date',
    write: (i, clock, m) => `Sat Mar 14 ${clock} 2026 ${host(i)} ${m}`,
    time: 'Sat Mar 14 09:00:00 2026',
    unit: 'gate-a',
  },
  {
    name: 'epoch seconds with a fraction',
    write: (i, _, m) => `${1_773_478_800 + i}.250 ${host(i)} ${m}`,
    time: '1773478800.250',
    unit: 'gate-a',
  },
  {
    name: 'a class of a program and a clock of twelve hours',
    write: (i, clock, m) => `3/14/2026 ${clock} AM  ${host(i)}  pairing.core: ${m}`,
    time: '3/14/2026 09:00:00 AM',
    unit: 'gate-a',
  },
  {
    name: 'a priority',
    write: (i, clock, m) => `<${number(i)}>2026-03-14T${clock}Z ${host(i)} ${m}`,
    time: '2026-03-14T09:00:00Z',
    unit: 'gate-a',
  },
];

function written({ write }: Case): readonly string[] {
  return Array.from({ length: 60 }, (_, i) => {
    const clock = `09:${String(Math.floor(i / 2)).padStart(2, '0')}:${i % 2 === 0 ? '00' : '30'}`;
    return write(i, clock, said[i % said.length] ?? '');
  });
}

const plain = readPhrasebook('built-in', null);

describe('the line pattern that is guessed', () => {
  for (const one of cases)
    test(`finds stamp, unit and message: ${one.name}`, () => {
      const lines = written(one);
      const guess = guessLine(lines, plain);
      const pattern = compilePattern(guess?.line ?? '', false);
      if (typeof pattern === 'string') throw new Error(pattern);
      expect(lines.filter((line) => pattern.match(line) === null)).toEqual([]);
      const groups = pattern.match(lines[0] ?? '') ?? {};
      const unit = groups.unit ?? null;
      expect({ time: groups.time, unit, message: groups.message }, guess?.line).toEqual({
        time: one.time,
        unit: one.unit,
        message: one.message ?? said[0],
      });
      expect(guess?.record).toBeNull();
    });

  test('is none for a text without stamps', () => {
    expect(guessLine(['Dear all,', 'the twin is in step.', 'Regards'], plain)).toBeNull();
  });

  test('says what begins a record where lines follow that begin none', () => {
    const [first = '', ...others] = cases.map(written);
    const lines = [...(others[0] ?? []), ...(first === '' ? [] : [])].flatMap((line) => [
      line,
      '    at frame 1',
      '',
    ]);
    const guess = guessLine(
      lines.filter((line) => line !== ''),
      plain,
    );
    const record = compilePattern(guess?.record ?? '', false);
    if (typeof record === 'string') throw new Error(record);
    expect(record.match('20260314-09:00:00 | I | gate-a | x')).not.toBeNull();
    expect(record.match('    at frame 1')).toBeNull();
  });
});
