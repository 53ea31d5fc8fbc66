import { describe, expect, test } from 'vitest';
import { atRest, but, cleanWork, conditionIn, nowOf } from '../../support/swap-now.ts';

/** The clean work up to a clock, that clock included. */
const workTo = (clock: string, ...plus: readonly string[]): readonly string[] => [
  ...but(atRest, 'light'),
  ...cleanWork.filter((line) => line.slice(0, 8) <= clock),
  ...plus,
];

describe('before a switchover', () => {
  test('waits for each thing until a line says it, then is met', async () => {
    const open = async (clock: string, ...plus: readonly string[]): Promise<string> => {
      const { holdPoint } = await nowOf(workTo(clock, ...plus));
      const waiting = holdPoint.conditions.filter((c) => c.status === 'waiting').map((c) => c.id);
      return `${holdPoint.id} ${holdPoint.half} ${holdPoint.status}: ${waiting.join(' ')}`;
    };
    expect(await open('09:00:00')).toBe('switchover B waiting: in identified roles reflash ready steady');
    expect(await open('09:04:59')).toBe('switchover B waiting: reflash ready steady');
    expect(await open('09:05:00')).toBe('switchover B waiting: ready steady');
    expect(await open('09:07:00')).toBe('switchover B waiting: ready steady');
    // Ready since 09:07: held after a minute, and then only the light is missing.
    expect(await open('09:07:00', '09:08:00 RO1 A link a up')).toBe('switchover B waiting: steady');
    expect(await open('09:09:00')).toBe('switchover B met: ');
  });

  test('what the old module said is nothing of the new one', async () => {
    const lines = [...atRest, ...cleanWork.filter((line) => line < '09:20')].filter(
      (line) => !line.includes('09:09:00') && !line.includes('light flashing'),
    );
    const now = await nowOf([...lines, '09:15:00 RO1 A link a up']);
    expect(conditionIn(now, 'steady').status).not.toBe('met');
  });

  test('a limit that has passed is a stop', async () => {
    const late = await nowOf(workTo('09:07:00', '09:10:01 RO1 A link a up'));
    expect([late.awaits, late.holdPoint.status, late.holdPoint.statement]).toEqual([
      'steady',
      'stop',
      'Stop and call for support: waited 5 min 01 s for the light of half B to be steady; the limit is 5 min 00 s.',
    ]);
  });

  test('a partner lost again is a stop once no work can explain it', async () => {
    const lost = workTo('09:09:00', '09:12:00 RO1 partner not ready');
    const now = await nowOf([...lost, '09:12:06 RO1 A link a up']);
    expect(conditionIn(now, 'ready').statement).toBe('Stop and call for support: the partner was lost.');
    // A removal may be logged next.
    expect(conditionIn(await nowOf([...lost, '09:12:05 RO1 A link a up']), 'ready').status).toBe('waiting');
  });

  test('the planned firmware counts, not only the same one', async () => {
    const now = await nowOf(workTo('09:09:00'), { B: { firmware: '6.5.0' } });
    expect(conditionIn(now, 'reflash').statement).toBe('Half B runs firmware 6.4.1; 6.5.0 is planned.');
  });

  test('the wrong half out is a stop: the active one, or one that is not planned', async () => {
    const active = await nowOf([
      ...atRest,
      '09:00:00 RO1 A module removed',
      '09:00:00 RO1 A role none',
      '09:00:01 RO1 B role active',
      '09:01:00 RO1 B link a up',
    ]);
    expect(conditionIn(active, 'removed-standby').statement).toBe(
      'Stop and call for support: half A was active when it was removed.',
    );
    const unplanned = await nowOf(workTo('09:00:00'), { A: {} });
    expect(conditionIn(unplanned, 'planned-half').statement).toBe(
      'Stop and call for support: half B was removed; the plan names half A.',
    );
  });

  test('a switchover onto a half that is not ready is a stop from then on', async () => {
    const early = workTo('09:05:00', '09:06:00 RO1 A role standby', '09:06:00.1 RO1 B role active');
    const now = await nowOf([...early, '09:06:30 RO1 B link a up']);
    expect(now.holdPoint.status).toBe('stop');
    expect(conditionIn(now, 'ready-before-switchover').statement).toBe(
      'Stop and call for support: the switchover to half B came while the partner was not ready.',
    );
  });
});

describe('before the second half', () => {
  const plan = { A: { model: 'Tern-4' }, B: { model: 'Tern-4' } };

  test('the roles are exchanged first, then its removal asks that the first has settled', async () => {
    const first = await nowOf(workTo('09:09:00'), plan);
    expect([first.awaits, first.holdPoint.id, first.holdPoint.half]).toEqual([
      'second-half',
      'switchover',
      'B',
    ]);
    const exchanged = await nowOf(workTo('09:20:01.1', '09:21:00 RO1 A light steady'), plan);
    expect([exchanged.holdPoint.id, exchanged.holdPoint.half]).toEqual(['removal', 'A']);
    expect(conditionIn(exchanged, 'first-settled').status).toBe('met');
    expect(conditionIn(exchanged, 'roles').statement).toBe('Half B is active and half A is standby.');
  });
});

describe('before leaving the cabinet', () => {
  test('waits for the soak with what it is so far, and is met once every check passes', async () => {
    const soaking = await nowOf([...atRest, ...cleanWork.filter((line) => !line.startsWith('09:45'))]);
    expect([soaking.awaits, soaking.holdPoint.id, soaking.holdPoint.status]).toEqual([
      'soak',
      'leaving',
      'waiting',
    ]);
    const over = await nowOf([...atRest, ...cleanWork]);
    expect([over.awaits, over.holdPoint.status, over.swap?.verdict]).toEqual([null, 'met', 'verified']);
  });

  test('what was not observed is never met', async () => {
    const dark = [...atRest, ...cleanWork].filter((line) => !line.includes('light'));
    const { holdPoint, swap } = await nowOf(dark);
    expect([swap?.verdict, holdPoint.status]).toEqual(['verified', 'waiting']);
    expect(holdPoint.conditions.find((c) => c.id === 'light-steady')?.statement).toMatch(
      /Not observed; check at the cabinet\.$/,
    );
  });

  test('a partner that was lost in the soak is a stop, though it is back', async () => {
    const now = await nowOf([
      ...atRest,
      ...cleanWork,
      '09:30:00 RO1 partner not ready',
      '09:31:00 RO1 partner ready',
    ]);
    expect(conditionIn(now, 'soaked').status).toBe('stop');
  });
});
