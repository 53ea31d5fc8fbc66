import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const line = (clock: string, message: string): string => `2026-03-01T${clock}Z RO1-A ${message}\n`;
const begin = [line('10:00:00', 'role active'), line('10:00:01', 'partner present')];

describe('verify, where there is no swap', () => {
  test('tells of an absence with its length, within the seconds of its stamps', async () => {
    const log = [...begin, line('10:10:00', 'partner absent'), line('10:12:41', 'partner present')];
    const { out, status } = await steadypair('verify', fileWith(log.join(''), 'x.log'));
    // 10:12:41 less 10:10:00 is 161 s; each stamp may stand for any instant of its second.
    expect(out.replaceAll('\n', ' ')).toContain(
      'RO1: the partner was absent for 2 min 40 s to 2 min 42 s, from 1 Mar 2026 10:10:00; no line says that a module was removed or replaced.',
    );
    expect(status).toBe(3);
  });

  test('tells of one that goes on', async () => {
    const log = [...begin, line('10:10:00', 'partner absent'), line('11:00:00', 'link a up')];
    const { out } = await steadypair('verify', fileWith(log.join(''), 'x.log'));
    expect(out).toContain('the partner was absent to the end of the log, from 1 Mar 2026 10:10:00;');
  });

  test('tells of none where none was logged', async () => {
    const { out } = await steadypair('verify', fileWith(begin.join(''), 'x.log'));
    expect(out).toBe('No swap found: no module was removed and replaced.\n');
  });
});

describe('a partner that was absent', () => {
  const log = [
    ...begin,
    line('10:00:02', 'partner ready'),
    line('10:10:00', 'partner absent'),
    line('10:12:41', 'partner present'),
    line('10:13:41', 'partner ready'),
    line('11:30:00', 'link a up'),
  ].join('');

  test('was not ready until the log says that it is again, though no line says that it was not', async () => {
    const { out } = await steadypair('fleet', '--json', fileWith(log, 'x.log'));
    const { pairs } = JSON.parse(out);
    // Not ready from 10:10:00 to 10:13:41, 221 s of the 5399 s from 10:00:01 or 5398 s from 10:00:02 on: one loss.
    expect(pairs[0].losses).toBe(1);
    expect((await steadypair('fleet', fileWith(log, 'x.log'))).out).toContain('1 loss in 1 h 30 min');
  });

  test('is lost once: that it is absent and not ready still, as the next export begins with, is no step', async () => {
    const poll = (...clocks: readonly (readonly [string, string])[]): string =>
      `time,unit,parameter,value\n${clocks
        .flatMap(([clock, value]) =>
          ['partner-present', 'partner-ready'].map((name) => `2026-03-01T${clock}Z,RO1,${name},${value}\n`),
        )
        .join('')}`;
    const one = poll(['10:00:00', 'yes'], ['10:00:10', 'yes'], ['10:00:20', 'no'], ['10:00:30', 'no']);
    const other = poll(['10:01:00', 'no'], ['10:01:10', 'no']);
    const { out } = await steadypair('timeline', fileWith(one, 'one.csv'), fileWith(other, 'other.csv'));
    const ready = out.split('\n').filter((row) => row.includes(',partner-ready,'));
    expect(ready.map((row) => row.split(',')[5])).toEqual(['yes', 'no']);
  });
});
