import { describe, expect, test } from 'vitest';
import type { SwapNow } from '../../../src/vocabulary.ts';
import { pollText } from '../../support/clean-swap.ts';
import { whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';
import { atRest, cleanWork, nowOf, shown } from '../../support/swap-now.ts';

const said = ({ awaits, half, since, limitSeconds }: SwapNow): string =>
  `${awaits} ${half ?? 'pair'} since ${since === null ? 'none' : whenOf(since)} limit ${limitSeconds}`;
const workTo = (clock: string): readonly string[] => [
  ...atRest,
  ...cleanWork.filter((line) => line.slice(0, 8) <= clock),
];

describe('a pair that is named, before its first removal', () => {
  test('awaits a ready partner for a quarter of an hour, then the removal', async () => {
    expect(said(await nowOf([...atRest, '08:50:00 RO1 A link a up']))).toBe(
      'baseline pair since 08:40:00 limit 900',
    );
    const ready = await nowOf([...atRest, '08:55:00 RO1 A link a up']);
    expect(said(ready)).toBe('out B since none limit null');
    expect(ready.swap).toBeNull();
  });

  test('awaits what else must hold where the partner is ready for long enough', async () => {
    const now = await nowOf([...atRest, '08:56:00 RO1 A link b down']);
    expect([now.awaits, now.says, now.limitSeconds]).toEqual([
      'baseline',
      'what is asked before a removal',
      null,
    ]);
  });

  test('is not shown unless it is named', async () => {
    expect(await shown([...atRest, '08:56:00 RO1 A link a up'], null)).toEqual([]);
  });
});

describe('a pair in work', () => {
  test('awaits what the open swap of its verification awaits, since then and with that limit', async () => {
    for (const clock of [
      '09:00:00',
      '09:02:00',
      '09:04:00',
      '09:05:00',
      '09:07:00',
      '09:09:00',
      '09:20:01',
    ]) {
      const now = await nowOf(workTo(clock));
      const { open } = now.swap ?? {};
      expect([now.awaits, now.half, now.says, now.since, now.limitSeconds]).toEqual([
        open?.awaits,
        open?.half,
        open?.says,
        open?.since,
        open?.limitSeconds,
      ]);
    }
    expect(said(await nowOf(workTo('09:04:00')))).toBe('reflash B since 09:03:00 limit 900');
  });

  test('says what each half holds, and which is out', async () => {
    expect((await nowOf(workTo('09:00:00'))).halves).toEqual([
      {
        half: 'A',
        isOut: false,
        role: 'active',
        light: null,
        model: 'Tern-4',
        serial: null,
        firmware: '6.4.1',
      },
      { half: 'B', isOut: true, role: 'none', light: 'steady', model: null, serial: null, firmware: null },
    ]);
  });

  test('shows its last lines, the newest last', async () => {
    const { lines } = await nowOf(workTo('09:07:00'));
    expect(lines.map((line) => line.text.slice(11))).toEqual([
      '09:02:00.000Z RO1-B light flashing',
      '09:03:00.000Z RO1-B reflash start',
      '09:05:00.000Z RO1-B reflash end',
      '09:05:00.000Z RO1-B firmware 6.4.1',
      '09:07:00.000Z RO1 partner ready',
    ]);
  });

  test('stays for a day once it is over, and no longer', async () => {
    const over = [...atRest, ...cleanWork];
    const [now] = await shown(over, null);
    expect([now?.awaits, now?.since, now?.says]).toEqual([null, null, now?.swap?.statement]);
    const days = (line: string): string => journalText(over.join('\n')) + line;
    const last = '2026-03-15T09:20:01.100Z RO1-A link a up\n';
    expect(await shown({ 'ro1.log': days(last.replace('01.100', '00.000')) }, null)).toHaveLength(1);
    expect(await shown({ 'ro1.log': days(last.replace('01.100', '02.000')) }, null)).toEqual([]);
  });

  test('with another one comes with the newest step first', async () => {
    const other = [
      '09:10:00 RO2 A role active',
      '09:10:00 RO2 B role standby',
      '09:12:00 RO2 B module removed',
    ];
    const pairs = async (lines: readonly string[]): Promise<readonly string[]> =>
      (await shown(lines, null)).map((now) => `${now.pair} ${now.awaits}`);
    expect(await pairs([...workTo('09:09:00'), ...other])).toEqual(['RO2 in', 'RO1 soak']);
    expect(await pairs([...workTo('09:20:02'), ...other])).toEqual(['RO1 soak', 'RO2 in']);
  });
});

describe('the clock that runs', () => {
  test('is that of the file with the newest stamp', async () => {
    const now = await nowOf({
      'a.log': journalText([...atRest, '08:56:00 RO1 A link a up'].join('\n')),
      'b.log': journalText('08:50:00 RO1 B link b up'),
    });
    expect([now.clock, whenOf({ time: now.at, earliest: now.at })]).toEqual(['a.log', '08:56:00']);
  });

  test('is that of the reference where the newest stamp is by a clock that is off', async () => {
    // The partner is lost and back five times; the poll's clock is ten minutes ahead.
    const flips = ['08:42', '08:44', '08:46', '08:48', '08:50'];
    const journal = flips.flatMap((clock) => [
      `${clock}:00 RO1 partner not ready`,
      `${clock}:30 RO1 partner ready`,
    ]);
    const ahead = flips.flatMap((clock) => [
      [`${clock.replace('08:4', '08:5').replace('08:50', '09:00')}:00`, 'no'] as const,
      [`${clock.replace('08:4', '08:5').replace('08:50', '09:00')}:30`, 'yes'] as const,
    ]);
    const now = await nowOf({
      'ro1.log': journalText([...atRest, ...journal, '08:55:00 RO1 A link a up'].join('\n')),
      'poll.csv': pollText(['08:50:00', '09:06:00'], 1, [
        ['RO1', 'partner ready', ['08:50:00', 'yes'], ...ahead.filter(([clock]) => clock > '08:50:00')],
      ]),
    });
    // The poll's last reading at 09:06:00 was made at 08:56:00 by the journal's clock.
    expect(now.clock).toBe('ro1.log');
    expect(Math.abs(now.at - Date.parse('2026-03-14T08:56:00Z'))).toBeLessThanOrEqual(1000);
  });

  test('has the habit of three spacings of the densest poll, and none of journals alone', async () => {
    const poll = (every: number): string =>
      pollText(['08:40:00', '08:56:00'], every, [['RO1', 'partner ready', ['08:40:00', 'yes']]]);
    const rest = journalText([...atRest, '08:56:00 RO1 A link a up'].join('\n'));
    expect((await nowOf({ 'ro1.log': rest })).habitSeconds).toBeNull();
    expect((await nowOf({ 'ro1.log': rest, 'a.csv': poll(20), 'b.csv': poll(5) })).habitSeconds).toBe(15);
  });
});
