import { describe, expect, test } from 'vitest';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { conditionIn, nowOf } from '../../support/swap-now.ts';

const always = '08:40:00';

/** A poll every 10 s of a pair at rest, all that is asked for; with other values where signals are named again. */
function poll(to: string, changed: readonly Polled[] = []): string {
  const half = (name: string, role: string, light: string): readonly Polled[] => [
    [`RO1-${name}`, 'role', [always, role]],
    [`RO1-${name}`, 'model', [always, 'Tern-4']],
    [`RO1-${name}`, 'serial', [always, `T4-${name}`]],
    [`RO1-${name}`, 'firmware', [always, '6.4.1']],
    [`RO1-${name}`, 'light', [always, light]],
    [`RO1-${name}`, 'link-a', [always, 'up']],
    [`RO1-${name}`, 'link-b', [always, 'up']],
    [`RO1-${name}`, 'supply', [always, 'good']],
  ];
  const rest: readonly Polled[] = [
    ['RO1', 'partner ready', [always, 'yes']],
    ['RO1', 'configuration', [always, 'current']],
    ...half('A', 'active', 'off'),
    ...half('B', 'standby', 'steady'),
  ];
  const isChanged = ([unit, parameter]: Polled): boolean =>
    changed.some((other) => other[0] === unit && other[1] === parameter);
  return pollText([always, to], 10, [...rest.filter((p) => !isChanged(p)), ...changed]);
}

const notes = (...lines: readonly string[]): string => `Pair RO1\n2026-03-14\n${lines.join('\n')}\n`;

async function said(id: string, files: Readonly<Record<string, string>>): Promise<string> {
  const now = await nowOf(files);
  const { status, statement } = conditionIn(now, id);
  return `${now.holdPoint.id} ${status}: ${statement}`;
}

describe('what was polled before a note', () => {
  // The reading at 08:59:50 is the newest one up to 08:59:59.
  const cases: readonly (readonly [string, string, string])[] = [
    [
      'roles',
      '08:59 switched over',
      'removal waiting: The role of half A was not observed since the last switchover; check at the cabinet.',
    ],
    [
      'steady',
      '08:59 switched over',
      'removal waiting: The light of half B was not observed since the last switchover; check at the cabinet.',
    ],
    [
      'links',
      '08:59 pulled module from slot B',
      'switchover waiting: Not observed: link a of half B, link b of half B; check at the cabinet.',
    ],
    [
      'roles',
      '09:00 pulled module from slot B',
      'switchover waiting: The role of half B was not observed since half B was removed; check at the cabinet.',
    ],
    [
      'reflash',
      '09:00 pulled module from slot B',
      'switchover waiting: The firmware of half B was not observed since half B was removed; check at the cabinet.',
    ],
  ];
  test.each(cases)('is not observed now: %s after %s', async (id, note, statement) => {
    expect(await said(id, { 'poll.csv': poll('08:59:50'), 'notes.txt': notes(note) })).toBe(statement);
  });

  test('is, once it is read after the minute of the note', async () => {
    const readTo = (to: string, note: string): Readonly<Record<string, string>> => ({
      'poll.csv': poll(to),
      'notes.txt': notes(note),
    });
    // A command that changed nothing: what is read from 09:00:00 on is read after it.
    expect(await said('roles', readTo('08:59:50', '08:59 switched over'))).toMatch(/waiting/);
    expect(await said('roles', readTo('09:00:00', '08:59 switched over'))).toMatch(/^removal met/);
    expect(await said('links', readTo('08:59:50', '08:59 switched over'))).toMatch(/^removal met/);
  });
});

describe('what was polled of a module that is gone', () => {
  // Out at 09:00:00, in at 09:00:20: what was read last at 08:59:50 counts as read for three spacings, to 09:00:20. Nothing but
  // a blank identity is read of an empty place.
  const gone = ['09:00:00', ''] as const;
  const swapped = (to: string, links: readonly Polled[]): string =>
    poll(to, [
      ['RO1', 'partner ready', [always, 'yes'], ['09:00:00', 'no'], ['09:04:00', 'yes']],
      ['RO1-B', 'role', [always, 'standby'], ['09:00:00', 'none'], ['09:00:20', 'standby']],
      ['RO1-B', 'model', [always, 'Tern-4'], gone, ['09:00:20', 'Tern-4']],
      ['RO1-B', 'serial', [always, 'T4-B'], gone, ['09:00:20', 'T4-C']],
      ['RO1-B', 'firmware', [always, '6.4.1'], gone, ['09:00:20', '6.4.1']],
      ...links,
    ]);
  const blank = (again: readonly (readonly [string, string])[]): readonly Polled[] =>
    ['link-a', 'link-b', 'supply'].map((signal): Polled => {
      const value = signal === 'supply' ? 'good' : 'up';
      return ['RO1-B', signal, [always, value], gone, ...again.map(([clock]) => [clock, value] as const)];
    });

  test('tells nothing of its place from the removal on', async () => {
    const file = { 'poll.csv': swapped('09:00:10', blank([])) };
    const noted = { ...file, 'notes.txt': notes('09:00 pulled module from slot B') };
    expect(await said('links', noted)).toBe(
      'switchover waiting: Not observed: link a of half B, link b of half B; check at the cabinet.',
    );
    expect(await said('fault', noted)).toBe(
      'switchover waiting: The supply of half B was not observed; check at the cabinet.',
    );
  });

  test('nor of the new module, until it is read of that', async () => {
    const unread = { 'poll.csv': swapped('09:00:20', blank([])) };
    expect(await said('links', unread)).toMatch(/^switchover waiting: Not observed: link a of half B/);
    const read = { 'poll.csv': swapped('09:00:20', blank([['09:00:20', 'up']])) };
    expect(await said('links', read)).toBe('switchover met: Both links of both halves are up.');
    expect(await said('fault', read)).toMatch(/^switchover met: Both supplies are good/);
  });

  test('and of the other half all that is read goes on', async () => {
    const down: Polled = ['RO1-A', 'link-a', [always, 'up'], ['09:00:10', 'down']];
    const file = { 'poll.csv': swapped('09:00:20', [...blank([['09:00:20', 'up']]), down]) };
    expect(await said('links', file)).toBe('switchover waiting: Down: link a of half A.');
  });
});
