import { describe, expect, test } from 'vitest';
import { type PanelOptions, panelText } from '../../../src/report/panel.ts';
import type { SwapNow } from '../../../src/vocabulary.ts';
import { options, panel } from '../../support/made-panel.ts';
import { condition, newest, swapNowWith, swapWith } from '../../support/made-swap-now.ts';

/** What is painted, with how. */
const painted = (now: SwapNow, clock: Partial<PanelOptions['clock']> = {}): readonly string[] => {
  const seen: string[] = [];
  const paint: PanelOptions['paint'] = (text, as) => {
    seen.push(`${as}: ${text}`);
    return text;
  };
  panelText(now, { ...options(clock), paint });
  return seen;
};

describe('the panel of a swap', () => {
  test('asks what is awaited, with its clock and its limit, in the first of ten lines', () => {
    const lines = panel(swapNowWith());
    expect(lines).toHaveLength(10);
    // 09:16:08 to 09:18:45.
    expect(lines[0]).toBe('RO1  02:37 of 15:00  Waiting for half B to be ready');
    expect(lines[1]).toBe('Usual here: median 2 min 31 s, 95th percentile 4 min 10 s, n = 7');
    expect(lines[2]).toBe('Clock of ro1-poll.csv: 09:18:45 (UTC)');
    expect(lines[3]).toBe('Hold point before switchover to half B: waiting. Not met: ready; met: roles');
    expect(lines[4]).toBe('  The partner is not ready.');
    expect(lines[5]).toBe('A  active   light off       6.4.1');
    expect(lines[6]).toBe('B  standby  light flashing  6.4.1');
    expect(lines[7]).toBe('ro1-events.log:31  [RO1-B] light flashing');
    expect(lines[9]).toBe('Never remove a module on a log alone: check at the cabinet which is standby.');
  });

  test('counts on by the clock that it is given', () => {
    expect(panel(swapNowWith(), { at: newest + 61_000 })[0]).toContain('03:38 of 15:00');
  });

  test('says that a limit has passed by that clock, before a row says so', () => {
    const late = { at: newest + 744_000 };
    expect(panel(swapNowWith(), late)[0]).toBe(
      'RO1  15:01 of 15:00, past its limit  Waiting for half B to be ready',
    );
    expect(painted(swapNowWith(), late)).toEqual([
      'verdict: RO1  15:01 of 15:00',
      'critical: , past its limit',
      'verdict:   Waiting for half B to be ready',
    ]);
  });

  test('counts a soak up to its 30 minutes and no further', () => {
    const since = { time: newest - 1_799_000, earliest: newest - 1_799_000 };
    const soak = swapNowWith({ awaits: 'soak', since, limitSeconds: 1800, says: 'a ready partner' });
    expect(panel(soak)[0]).toContain('29:59 of 30:00');
    expect(panel(soak, { at: newest + 60_000 })[0]).toBe('RO1  30:00 of 30:00  Waiting for a ready partner');
  });

  test('counts nothing where there is no beginning, and to no limit where there is none', () => {
    const out = { awaits: 'out', says: 'the first removal', limitSeconds: null, expected: null } as const;
    expect(panel(swapNowWith({ ...out, since: null }))[0]).toBe('RO1  Waiting for the first removal');
    expect(panel(swapNowWith(out))[0]).toBe('RO1  02:37  Waiting for the first removal');
    expect(panel(swapNowWith(out))[1]).toBe('');
  });

  test('says n where too few bring-ups tell a time', () => {
    const expected = { median: null, p95: null, n: 2 };
    expect(panel(swapNowWith({ expected }))[1]).toBe('Usual time here: not known (n = 2)');
  });

  test('puts a stop first, in rust, with what it is for', () => {
    const base = swapNowWith();
    const statement = 'Stop and call for support: the partner was lost.';
    const holdPoint = {
      ...base.holdPoint,
      status: 'stop',
      conditions: [
        condition('links', 'waiting', 'Down: link a of half B.'),
        condition('roles', 'met', 'Half A is active and half B is standby.'),
        condition('ready', 'stop', statement),
      ],
    } as const;
    const lines = panel({ ...base, holdPoint });
    expect(lines[3]).toBe('Hold point before switchover to half B: stop. Not met: ready, links; met: roles');
    expect(lines[4]).toBe(`  ${statement} Down: link a of half B.`);
    expect(painted({ ...base, holdPoint })).toContain(
      'critical: Hold point before switchover to half B: stop',
    );
  });

  test('paints only the question where nothing is abnormal', () => {
    expect(painted(swapNowWith())).toEqual([
      'verdict: RO1  02:37 of 15:00',
      'verdict:   Waiting for half B to be ready',
    ]);
  });

  test('shows a half that is out, and one of which nothing is known', () => {
    const [half] = swapNowWith().halves;
    const unknown = { role: null, light: null, model: null, serial: null, firmware: null };
    const halves = [
      { half: 'A', isOut: true, ...unknown, role: 'none' },
      { half: 'B', isOut: false, ...unknown },
    ];
    expect(half?.half).toBe('A');
    const lines = panel(swapNowWith({ halves }));
    expect(lines.slice(5, 7)).toEqual(['A  out', 'B  role not known']);
  });

  test('says of a swap that is over its verdict', () => {
    const statement = 'Pair RO1 is verified: half B was replaced and it came back redundant.';
    const swap = swapWith({ verdict: 'verified', statement });
    const lines = panel(swapNowWith({ awaits: null, says: statement, since: null, swap }));
    expect(lines.slice(0, 2)).toEqual(['RO1  The swap is over: verified', statement]);
  });

  test('counts the checks that failed already', () => {
    const check = {
      id: 'x',
      title: 'X',
      statement: '',
      evidence: swapNowWith().holdPoint.conditions[0].evidence,
    };
    const swap = swapWith({
      verdict: 'not-verified',
      checks: [
        { ...check, status: 'fail' },
        { ...check, status: 'pass' },
        { ...check, status: 'fail' },
      ],
    });
    const now = swapNowWith({ swap, expected: null });
    expect(panel(now)[1]).toBe('2 checks failed. Usual time here: not known');
    expect(painted(now)).toContain('critical: 2 checks failed');
  });
});
