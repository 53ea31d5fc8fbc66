import { describe, expect, test } from 'vitest';
import { journalText } from '../../support/read-text.ts';
import { atRest, but, conditionIn, nowOf } from '../../support/swap-now.ts';

/** The log goes on to 08:56, sixteen minutes after its begin. */
const rest = [...atRest, '08:56:00 RO1 A link a up'];
const texts = (lines: readonly { readonly text: string }[]): readonly string[] =>
  lines.map((line) => line.text.slice(11).replace('.000Z', ''));

describe('before a removal', () => {
  test('all is met where lines say all of it', async () => {
    const { holdPoint } = await nowOf(rest);
    expect([holdPoint.id, holdPoint.half, holdPoint.status, holdPoint.statement]).toEqual([
      'removal',
      'B',
      'met',
      'Before the removal of half B: all 7 conditions are met.',
    ]);
    expect(holdPoint.conditions.map((c) => c.statement)).toEqual([
      'Half A is active and half B is standby.',
      'The partner is ready without a break for 15 min 00 s at least.',
      'The light of half B is steady.',
      'Both links of both halves are up.',
      'The configuration is current.',
      'Both supplies are good; no fault was ever logged.',
      'Model and firmware of both halves are known.',
    ]);
    expect(texts(holdPoint.conditions[0].evidence)).toEqual([
      '08:40:00 RO1-A role active',
      '08:40:00 RO1-B role standby',
    ]);
  });

  // A condition, what is left out of the log, what is added, and what it says then.
  const cases: readonly (readonly [string, string, readonly string[], string])[] = [
    [
      'roles',
      'A  role',
      [],
      'The role of half A is concluded from that of the other half, no line states it; check at the cabinet.',
    ],
    ['ready', 'partner ready', [], 'Whether the partner is ready was not observed; check at the cabinet.'],
    ['ready', '', ['08:50:00 RO1 partner not ready'], 'The partner is not ready.'],
    [
      'ready',
      '',
      ['08:45:00 RO1 partner not ready', '08:46:00 RO1 partner ready'],
      'The partner has been ready for 10 min 00 s; 15 min 00 s without a break is needed.',
    ],
    ['steady', 'light', [], 'The light of half B was not observed; check at the cabinet.'],
    ['steady', '', ['08:50:00 RO1 B light flashing'], 'The light of half B is flashing.'],
    ['links', '', ['08:50:00 RO1 B link b down'], 'Down: link b of half B.'],
    ['links', '', ['08:50:00 RO1 B links crossed'], 'The links of half B are crossed.'],
    ['links', 'B  link a', [], 'Not observed: link a of half B; check at the cabinet.'],
    ['configuration', '', ['08:50:00 RO1 configuration pending'], 'A configuration is pending.'],
    ['configuration', 'configuration', [], 'The configuration was not observed; check at the cabinet.'],
    ['fault', '', ['08:50:00 RO1 A supply fault'], 'The supply of half A is at fault.'],
    [
      'fault',
      '',
      ['08:50:00 RO1 A hardware fault'],
      'A fault of half A was logged, and no bring-up settled after it.',
    ],
    ['fault', 'B  supply', [], 'The supply of half B was not observed; check at the cabinet.'],
    ['identity', 'B  model', [], 'Not observed: model of half B; check at the cabinet.'],
  ];
  test.each(cases)('%s waits, without "%s" and with %j', async (id, without, plus, statement) => {
    const now = await nowOf(but(rest, without, ...plus));
    const { status, statement: said } = conditionIn(now, id);
    expect([status, said]).toEqual(['waiting', statement]);
    expect(now.holdPoint.status).toBe('waiting');
  });

  test('the ready partner is counted to the second', async () => {
    const from = (clock: string): Promise<string> =>
      nowOf([...atRest, `${clock} RO1 A link a up`]).then((now) => conditionIn(now, 'ready').status);
    expect(await from('08:54:59')).toBe('waiting');
    expect(await from('08:55:00')).toBe('met');
  });

  test('both halves active, or neither, is a stop', async () => {
    const both = await nowOf([...rest, '08:50:00 RO1 B role active']);
    expect([both.holdPoint.status, both.holdPoint.statement]).toEqual([
      'stop',
      'Stop and call for support: both halves are active, for at least 6 min 00 s.',
    ]);
    const neither = await nowOf([...rest, '08:50:00 RO1 A role standby']);
    expect(conditionIn(neither, 'roles').statement).toBe(
      'Stop and call for support: neither half is active, for at least 6 min 00 s.',
    );
  });

  test('the planned half is named, and waits where it is active', async () => {
    const now = await nowOf(rest, { A: { model: 'Tern-4' } });
    expect([now.holdPoint.half, conditionIn(now, 'roles').statement]).toEqual([
      'A',
      'Half A is active; half B is standby.',
    ]);
  });
});

describe('what a source stopped telling', () => {
  test('is not met: a log that ends an hour before the others', async () => {
    const of = (lines: readonly string[]): string => journalText(lines.join('\n'));
    const states = atRest.filter((line) => !line.includes('configuration'));
    const now = await nowOf({
      'states.log': of([...states, '09:56:00 RO1 A link a up']),
      'configuration.log': of(['08:40:00 RO1 configuration current', '08:56:00 RO1 configuration current']),
    });
    const { status, statement } = conditionIn(now, 'configuration');
    expect([status, statement]).toEqual([
      'waiting',
      'The configuration was not observed for the last 1 h 00 min; check at the cabinet.',
    ]);
    expect(conditionIn(now, 'ready').status).toBe('met');
  });
});
