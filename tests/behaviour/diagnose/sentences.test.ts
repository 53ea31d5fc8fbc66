import { describe, expect, test } from 'vitest';
import { answerOf, diagnoseCase, shortLine } from '../../support/check-cause.ts';
import { at } from '../../support/clean-swap.ts';
import { answer, begin, diagnosed, end, lateLight, lost, restart } from '../../support/diagnosed.ts';

describe('the answer begins with', () => {
  test('how long and since when, how many attempts failed, and how far the last one got', async () => {
    expect((await answer(lost, '10:11:00 RO1 B sync start', '10:13:00 RO1 B sync failed'))[0]).toBe(
      'RO1 has had no ready partner for 20 min 00 s, since 10:10:00; one attempt was logged in that time, which failed after 2 min 00 s; half B reached stage synchronising.',
    );
    const starts = ['10:11:00', '10:14:00'].map((clock) => `${clock} RO1 B sync start`);
    const ends = ['10:13:00', '10:16:00'].map((clock) => `${clock} RO1 B sync failed`);
    expect((await answer(lost, ...starts, ...ends))[0]).toContain(
      '; both attempts in that time failed after 2 min 00 s each;',
    );
    expect((await answer('10:28:00 RO1 partner not ready'))[0]).toBe(
      'RO1 has had no ready partner for 2 min 00 s, since 10:28:00; no attempt was logged in that time; half B is at stage starting.',
    );
  });

  test('since when a partner that was lost again and again is ready, and how often it was lost', async () => {
    const losses = [20, 22, 24, 26].flatMap((m) => [
      `10:${m}:00 RO1 partner not ready`,
      `10:${m}:20 RO1 partner ready`,
    ]);
    expect((await answer(...losses)).slice(0, 2)).toEqual([
      'RO1 has had a ready partner for the last 3 min 40 s; before that the partner was lost four times, from 10:20:00 on.',
      'Since 10:20:00 no attempt was logged.',
    ]);
  });

  test('a ready partner, and then a light that was not steady in time', async () => {
    expect((await answer(...lateLight)).slice(0, 2)).toEqual([
      'RO1 has had a ready partner for the last 18 min 00 s; before that the partner was lost once with a restart, at 10:10:00.',
      'The light of half B was not steady 5 min 00 s after its start at 10:10:00, and is not now.',
    ]);
  });

  test('that nothing says whether there is a partner', async () => {
    const diagnosis = await diagnosed(['10:00:00 RO1 A role active', end]);
    expect([diagnosis.healthy, ...answerOf(diagnosis).slice(0, 2)]).toEqual([
      false,
      'RO1: readiness was never logged in 30 min 00 s of log; no attempt was logged; the stage it reached was not logged.',
      'The logs do not show whether anything is wrong now.',
    ]);
  });

  test('the standby where no log tells of a half', async () => {
    const lines = ['10:00:00 RO1 partner ready', lost, '10:30:00 RO1 configuration current'];
    const diagnosis = await diagnosed(lines);
    expect([diagnosis.half, diagnosis.stage]).toEqual([null, null]);
    expect(answerOf(diagnosis)[0]).toBe(
      'RO1 has had no ready partner for 20 min 00 s, since 10:10:00; no attempt was logged in that time; the stage it reached was not logged.',
    );
  });

  test('and tells how long those that worked had stayed where the last one ended', async () => {
    const worked = [restart, lost, '10:12:00 RO1 partner ready'];
    const overdue = ['10:20:00 RO1 B module restart', '10:20:00 RO1 partner not ready'];
    // The first restart was `starting` for 2 min, until it was ready; the last for the 10 min to the end of the log.
    expect((await answer(...worked, ...overdue))[2]).toBe(
      'The last attempt has spent 10 min 00 s in stage starting; the only successful attempt spent 2 min 00 s there.',
    );
    const again = [
      '10:15:00 RO1 B module restart',
      '10:15:00 RO1 partner not ready',
      '10:18:00 RO1 partner ready',
    ];
    expect((await answer(...worked, ...again, ...overdue))[2]).toBe(
      'The last attempt has spent 10 min 00 s in stage starting; the 2 successful attempts spent 2 min 00 s to 3 min 00 s there.',
    );
  });
});

describe('attempts of which no line says the half', () => {
  test('count with those of which one does', async () => {
    const lines = [
      '10:00:00 RO1 partner ready',
      lost,
      '10:11:00 RO1 B sync start',
      '10:12:00 RO1 B sync failed',
      '10:14:00 RO1 sync start',
      '10:15:00 RO1 sync failed',
      '10:30:00 RO1 configuration current',
    ];
    expect(answerOf(await diagnosed(lines))[0]).toContain(
      '; both attempts in that time failed after 1 min 00 s each;',
    );
  });
});

describe('how long the last attempt stayed where it ended', () => {
  // The first sync took the 2 min from its start until the partner was ready.
  const worked = [
    '10:02:00 RO1 B module restart',
    '10:02:00 RO1 partner not ready',
    '10:03:00 RO1 B sync start',
    '10:05:00 RO1 partner ready',
  ];
  const stayed = async (...lines: readonly string[]): Promise<readonly string[]> =>
    (await answer(...worked, lost, ...lines)).filter((s) => s.startsWith('The last attempt'));
  test('is told of a sync that failed a minute after its start', async () => {
    expect(await stayed('10:11:00 RO1 B sync start', '10:12:00 RO1 B sync failed')).toEqual([
      'The last attempt failed after 1 min 00 s in stage synchronising; the only successful attempt spent 2 min 00 s there.',
    ]);
  });
  test('is not known where the start of the failed sync was not logged', async () => {
    expect(await stayed('10:12:00 RO1 B sync failed')).toEqual([]);
  });
});

describe('trouble', () => {
  test('began with the loss that lasts, or with the first of a spell of flapping before it', async () => {
    const { from, to } = await diagnosed([...begin, lost, end]);
    expect([from, to]).toEqual([at('10:10:00'), at('10:30:00')]);
    const losses = [20, 22, 24, 26].flatMap((m) => [
      `10:${m}:00 RO1 partner not ready`,
      `10:${m}:20 RO1 partner ready`,
    ]);
    expect((await diagnosed([...begin, ...losses, '10:28:00 RO1 partner not ready', end])).from).toBe(
      at('10:20:00'),
    );
  });

  test('rests on the line that began it and the last one read', async () => {
    const { causes } = await diagnoseCase({ name: '' });
    expect(causes[0]?.for[0].evidence.map(({ text }) => shortLine(text))).toEqual([
      '07:00:00 RO1 partner not ready',
      '08:00:00 RO1 A light off',
    ]);
    expect(causes[0]?.for.map((p) => p.statement)).toEqual([
      'In 1 h 00 min all 3 attempts failed after 40 s to 5 min 30 s; for comparison, a partner was ready once.',
      'Not enough data to judge: active-overloaded, memory-short.',
    ]);
    expect(causes[0]?.next).toBe(
      'Export for RO1, over the same time: a poll of load and memory (load, free-memory).',
    );
  });

  test('of a light rests on the start of the half whose light it is', async () => {
    const late = [
      '10:10:00 RO1 A supply good',
      restart,
      lost,
      '10:10:00 RO1 B light flashing',
      '10:12:00 RO1 partner ready',
    ];
    const { causes } = await diagnosed([...begin, ...late, end]);
    expect(causes.find((c) => c.id === 'too-little-data')?.for[0].evidence[0].text).toContain('RO1-B');
  });

  test('of which a cause is sure: the answer names it, with its odds, and what to check', async () => {
    // 9 decibans and those of (3.5 / 4) to (0.5 / 2), 5.4: 14.4, or 28 to 1.
    const crossed = '06:59:50  RO1 B  links crossed';
    expect(answerOf(await diagnoseCase({ name: '', plus: [crossed] })).slice(1)).toEqual([
      'Most likely cause: the network cables are exchanged (28 to 1).',
      'Check next: look at both network cables of both halves: which port, which network.',
    ]);
    const lighter = await diagnoseCase({
      name: '',
      without: ['RO1 B  model'],
      plus: [crossed, '06:00:00  RO1 B  model Tern-2'],
    });
    // The models differed when it was ready too: 6.7 decibans are listed, and not named here.
    expect(lighter.causes.map((c) => c.id)).toEqual(['links-crossed', 'models-differ']);
    expect(answerOf(lighter)[1]).toBe('Most likely cause: the network cables are exchanged (28 to 1).');
    const heavier = await diagnoseCase({
      name: '',
      plus: [crossed, '06:59:58  RO1 B  model Tern-2'],
    });
    // 14.4 and 11.4 decibans.
    expect(heavier.causes.map((c) => c.id)).toEqual(['links-crossed', 'models-differ']);
    const others = [...heavier.doubted, ...heavier.unjudged].map((c) => c.id);
    for (const id of ['links-crossed', 'models-differ', 'too-little-data']) expect(others).not.toContain(id);
    const both = await diagnoseCase({ name: '', plus: [crossed, '06:59:58  RO1 B  firmware 6.2.0'] });
    // 10 and 5.4 decibans: 35 to 1.
    expect(answerOf(both)[1]).toMatch(
      /^Most likely cause: .*firmware.* \(35 to 1\); also possible: the network cables are exchanged \(28 to 1\)\.$/,
    );
  });
});
