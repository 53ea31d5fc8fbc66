import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { answerOf } from '../../support/check-cause.ts';
import { at } from '../../support/clean-swap.ts';
import { answer, begin, diagnosed, end, lateLight, lost, restart } from '../../support/diagnosed.ts';
import { analyseTexts } from '../../support/read-text.ts';

describe('a healthy pair', () => {
  test('has been ready for so long, or since the log begins', async () => {
    expect(await answer(lost, '10:12:00 RO1 partner ready')).toEqual([
      'RO1 has had a ready partner for the last 18 min 00 s; before that the partner was lost once, at 10:10:00.',
      'No trouble found with RO1 at the end of its log.',
    ]);
    const poll =
      'time,unit,parameter,value\n2026-03-14T10:00:00.0Z,RO1,partner-ready,yes\n2026-03-14T10:10:00.0Z,RO1,partner-ready,yes\n';
    const diagnosis = diagnose(await analyseTexts({ 'poll.csv': poll }), null);
    expect(answerOf(diagnosis)).toEqual([
      'RO1 has had a ready partner for the last 10 min 00 s at least.',
      'No trouble found with RO1 at the end of its log.',
    ]);
    expect([diagnosis.from, diagnosis.to]).toEqual([at('10:00:00'), at('10:10:00')]);
  });

  test('was ready for a minute at least; a loss before that is no trouble any more', async () => {
    expect((await diagnosed([...begin, lost, '10:29:00 RO1 partner ready', end])).healthy).toBe(true);
    expect((await diagnosed([...begin, lost, '10:29:00.001 RO1 partner ready', end])).healthy).toBe(false);
  });

  test('is one whose flapping has died down', async () => {
    const losses = [1, 3, 5].flatMap((m) => [
      `10:0${m}:00 RO1 partner not ready`,
      `10:0${m}:20 RO1 partner ready`,
    ]);
    expect((await diagnosed([...begin, ...losses, '10:20:00 RO1 configuration current'])).healthy).toBe(
      false,
    );
    expect((await diagnosed([...begin, ...losses, '11:00:00 RO1 configuration current'])).healthy).toBe(true);
  });

  test('is one whose losses were those of its restarts: they make no flapping', async () => {
    const restarts = [18, 20, 22, 24].flatMap((m) => [
      `10:${m}:00 RO1 B module restart`,
      `10:${m}:01 RO1 partner not ready`,
      `10:${m}:20 RO1 partner ready`,
    ]);
    const diagnosis = await diagnosed([...begin, ...restarts, end]);
    expect([diagnosis.healthy, diagnosis.from]).toEqual([true, at('10:24:00')]);
  });

  test('is one whose late light became steady after all, or whose half is active by now', async () => {
    expect((await diagnosed([...begin, ...lateLight, end])).healthy).toBe(false);
    expect((await diagnosed([...begin, ...lateLight, '10:25:00 RO1 B light steady', end])).healthy).toBe(
      true,
    );
    const taken = ['10:25:00 RO1 A role standby', '10:25:00 RO1 B role active'];
    expect((await diagnosed([...begin, ...lateLight, ...taken, end])).healthy).toBe(true);
  });
});

describe('a light that was steady and flashes again', () => {
  test('while the partner is ready is trouble from then on, and no light that was late', async () => {
    const steady = [restart, lost, '10:12:00 RO1 partner ready', '10:12:00 RO1 B light steady'];
    const diagnosis = await diagnosed([...begin, ...steady, '10:25:00 RO1 B light flashing', end]);
    expect([diagnosis.healthy, diagnosis.from]).toEqual([false, at('10:25:00')]);
    expect(answerOf(diagnosis)[1]).toBe(
      'The light of half B, the standby, was steady; it has been flashing again since 10:25:00.',
    );
    expect(diagnosis.findings.map((f) => f.id)).not.toContain('light-timeout');
    const back = ['10:25:00 RO1 B light flashing', '10:26:00 RO1 B light steady'];
    expect((await diagnosed([...begin, ...steady, ...back, end])).healthy).toBe(true);
  });

  test('with a loss has five minutes to be steady', async () => {
    const flashing = [lost, '10:10:00 RO1 B light flashing', '10:12:00 RO1 partner ready'];
    const to = (clock: string): Promise<Diagnosis> =>
      diagnosed([...begin, ...flashing, `${clock} RO1 A light off`]);
    expect((await to('10:15:00')).healthy).toBe(true);
    expect((await to('10:15:00.001')).healthy).toBe(false);
  });

  test('of the active half says nothing of the standby', async () => {
    const own = ['10:00:00 RO1 A light steady', '10:25:00 RO1 A light flashing'];
    expect((await diagnosed([...begin, ...own, '10:30:00 RO1 configuration current'])).healthy).toBe(true);
  });
});
