import { describe, expect, test } from 'vitest';
import { change, ends, first, on, roles, said, swaps } from '../../support/swap-journals.ts';

describe('a swap', () => {
  test('reaches from 15 min before the removal to 30 min after it settled', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T12:00:00 RO1-A light off'];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:37:00']);
  });

  test('ends with the log, or where the user says, if that comes first', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T09:30:00 RO1-A light off'];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:30:00']);
    expect(ends(await swaps(lines, { from: null, to: on('14T09:20:00') }))).toEqual([
      '14T08:45:00 14T09:20:00',
    ]);
  });

  test('that never settled ends with the log', async () => {
    expect(ends(await swaps([...first, '14T12:00:00 RO1-A light off']))).toEqual(['14T08:45:00 14T12:00:00']);
  });

  test('that had not settled where the user says the end is, ends there', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T12:00:00 RO1-A light off'];
    expect(ends(await swaps(lines, { from: null, to: on('14T09:06:00') }))).toEqual([
      '14T08:45:00 14T09:06:00',
    ]);
  });

  test('goes on where a restart follows before 30 min are over', async () => {
    const lines = [
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:37:00 RO1-B module restart',
      '14T09:37:00 RO1 partner not ready',
      '14T09:40:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    const [swap, ...others] = await swaps(lines);
    expect(ends(swap === undefined ? [] : [swap])).toEqual(['14T08:45:00 14T10:10:00']);
    expect(swap?.bringUps.map((b) => [b.cause, b.outcome])).toEqual([
      ['inserted', 'settled'],
      ['restart', 'settled'],
    ]);
    expect(others).toEqual([]);
  });

  test('does not go on for a restart after that, nor look at what was before it', async () => {
    const lines = [
      '14T08:20:00 RO1-B module restart',
      '14T08:20:00 RO1 partner not ready',
      '14T08:22:00 RO1 partner ready',
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:37:00.500 RO1-B module restart',
      '14T09:37:00.500 RO1 partner not ready',
      '14T09:40:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    const found = await swaps(lines);
    expect(ends(found)).toEqual(['14T08:45:00 14T09:37:00']);
    expect(found.map((s) => s.bringUps.map((b) => b.cause))).toEqual([['inserted']]);
  });

  test('goes on from a reflash that came before the new module was ready', async () => {
    const lines = [
      ...first,
      '14T09:03:00 RO1-B reflash start',
      '14T09:05:00 RO1-B reflash end',
      '14T09:10:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:40:00']);
  });

  test('ends 30 min after it settled where a later restart was cut short by a switchover', async () => {
    const lines = [
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:15:00 RO1-B module restart',
      '14T09:15:00 RO1 partner not ready',
      ...roles('14T09:20:00', 'B', 'A'),
      '14T12:00:00 RO1-A light off',
    ];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:37:00']);
  });

  test('ends with the log where the second half was switched over to before it was ready', async () => {
    const lines = [
      '14T08:00:00 RO1-A serial T2-9',
      ...first,
      '14T09:07:00 RO1 partner ready',
      ...roles('14T09:20:00', 'B', 'A'),
      ...change('14T09:30:00', '14T09:32:00', 'T4-9').map((line) => line.replace('RO1-B', 'RO1-A')),
      ...roles('14T09:40:00', 'A', 'B'),
      '14T12:00:00 RO1-A light off',
    ];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T12:00:00']);
  });

  test('knows nothing of a restart after the end that the user gives', async () => {
    const lines = [
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:32:00 RO1-B module restart',
      '14T09:32:00 RO1 partner not ready',
      '14T12:00:00 RO1-A light off',
    ];
    const [swap] = await swaps(lines, { from: null, to: on('14T09:30:00') });
    expect(swap?.checks.find((c) => c.id === 'soaked')).toMatchObject({
      status: 'inconclusive',
      statement: 'The log ends 23 min 00 s after the last module settled; 30 min 00 s are needed.',
    });
  });

  test('holds what happens at the very end that the user gives', async () => {
    const lines = [
      ...first,
      '14T09:07:00 RO1 partner ready',
      ...roles('14T09:20:00', 'B', 'A'),
      '14T12:00:00 RO1-A light off',
    ];
    const [begun] = await swaps(lines, { from: null, to: on('14T09:02:00') });
    expect(begun?.bringUps.map((b) => b.cause)).toEqual(['inserted']);
    const [switched] = await swaps(lines, { from: null, to: on('14T09:20:00') });
    expect(switched?.switchovers).toHaveLength(1);
  });

  test('holds the switchover that pulling the active half brings', async () => {
    const lines = [
      ...roles('14T08:30:00', 'B', 'A'),
      ...first,
      '14T09:00:00 RO1-A role active',
      '14T09:00:00 RO1-B role none',
      '14T12:00:00 RO1-A light off',
    ];
    const [swap] = await swaps(lines);
    expect(swap?.switchovers.map((s) => `${said(s.at.time)} ${s.fromHalf}${s.toHalf}`)).toEqual([
      '14T09:00:00 BA',
    ]);
  });

  test('looks at its own switchovers only', async () => {
    const lines = [
      ...roles('14T08:30:00', 'B', 'A'),
      ...roles('14T08:40:00', 'A', 'B'),
      ...first,
      '14T09:07:00 RO1 partner ready',
      ...roles('14T09:20:00', 'B', 'A'),
      ...roles('14T09:50:00', 'A', 'B'),
      '14T12:00:00 RO1-A light off',
    ];
    const [swap] = await swaps(lines);
    expect(swap?.switchovers.map((s) => `${said(s.at.time)} ${s.fromHalf}${s.toHalf}`)).toEqual([
      '14T09:20:00 AB',
    ]);
  });
});
