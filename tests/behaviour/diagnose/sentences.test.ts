import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { diagnoseCase, shortLine } from '../../support/check-cause.ts';
import { at } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const begin = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 partner ready',
  '10:00:00 RO1 B light steady',
];
const end = '10:30:00 RO1 A light off';

async function diagnosed(lines: readonly string[], pair: string | null = null): Promise<Diagnosis> {
  return diagnose(await analyseTexts({ 'a.log': journalText([...lines].sort().join('\n')) }), pair);
}
const first = async (...lines: readonly string[]): Promise<string> =>
  (await diagnosed([...begin, ...lines, end])).sentences[0];
const lost = '10:10:00 RO1 partner not ready';
const restart = '10:10:00 RO1 B module restart';

describe('the answer begins with', () => {
  test('since when, how far it gets and how often it failed', async () => {
    expect(await first(lost, '10:11:00 RO1 B sync start', '10:13:00 RO1 B sync failed')).toBe(
      'For 20 min 00 s RO1 has had no ready partner that holds: half B gets as far as synchronising, in 1 failed attempt.',
    );
    const starts = ['10:11:00', '10:14:00'].map((clock) => `${clock} RO1 B sync start`);
    const ends = ['10:13:00', '10:16:00'].map((clock) => `${clock} RO1 B sync failed`);
    expect(await first(lost, ...starts, ...ends)).toContain('in 2 failed attempts.');
    expect(await first('10:28:00 RO1 partner not ready')).toBe(
      'For 2 min 00 s RO1 has had no ready partner that holds: half B gets as far as starting.',
    );
  });

  test('a partner that has come and gone', async () => {
    const losses = [20, 22, 24, 26].flatMap((m) => [
      `10:${m}:00 RO1 partner not ready`,
      `10:${m}:20 RO1 partner ready`,
    ]);
    expect(await first(...losses)).toMatch(
      /^For 10 min 00 s the partner of RO1 has come and gone: half B gets as far as /,
    );
  });

  test('a light that has not been steady', async () => {
    expect(await first(restart, lost, '10:10:00 RO1 B light flashing', '10:12:00 RO1 partner ready')).toMatch(
      /^RO1 has a ready partner, but for 20 min 00 s its light has not been steady: half B gets as far as ready/,
    );
  });

  test('that nothing says whether there is a partner', async () => {
    const { sentences, healthy } = await diagnosed(['10:00:00 RO1 A role active', end]);
    expect([healthy, sentences[0]]).toEqual([
      false,
      'Nothing that was read says whether RO1 has a ready partner.',
    ]);
  });

  test('the standby where no log tells of a half', async () => {
    const { sentences, half, stage } = await diagnosed([
      '10:00:00 RO1 partner ready',
      lost,
      '10:30:00 RO1 configuration current',
    ]);
    expect([half, stage]).toEqual([null, null]);
    expect(sentences[0]).toBe(
      'For 20 min 00 s RO1 has had no ready partner that holds: how far it gets is not logged.',
    );
  });

  test('how long those that worked had stayed where the last one ended', async () => {
    const worked = [restart, lost, '10:12:00 RO1 partner ready'];
    const failed = [
      '10:20:00 RO1 B module restart',
      '10:20:00 RO1 partner not ready',
      '10:25:00 RO1 B sync failed',
    ];
    // The first restart was `starting` for 2 min, until it was ready; the last for the 5 min until it failed.
    expect(await first(...worked, ...failed)).toContain(
      'in 1 failed attempt; the last stayed there for 5 min 00 s, where the one that worked needed 2 min 00 s.',
    );
    const again = [
      '10:15:00 RO1 B module restart',
      '10:15:00 RO1 partner not ready',
      '10:18:00 RO1 partner ready',
    ];
    expect(await first(...worked, ...again, ...failed)).toContain(
      'the last stayed there for 5 min 00 s, where the 2 that worked needed 2 min 00 s to 3 min 00 s.',
    );
  });
});

describe('a healthy pair', () => {
  test('has been ready for so long, or since the log begins', async () => {
    expect(await first(lost, '10:12:00 RO1 partner ready')).toBe(
      'Nothing is wrong with RO1 now. Half B has been ready for 18 min 00 s.',
    );
    const poll =
      'time,unit,parameter,value\n2026-03-14T10:00:00.0Z,RO1,partner-ready,yes\n2026-03-14T10:10:00.0Z,RO1,partner-ready,yes\n';
    const { sentences, from, to } = diagnose(await analyseTexts({ 'poll.csv': poll }), null);
    expect(sentences).toEqual([
      'Nothing is wrong with RO1 now. Its partner has been ready since the log begins.',
    ]);
    expect([from, to]).toEqual([at('10:00:00'), at('10:10:00')]);
  });

  test('was ready for a minute at least; a loss before that is no trouble any more', async () => {
    expect((await diagnosed([...begin, lost, '10:29:00 RO1 partner ready', end])).healthy).toBe(true);
    expect((await diagnosed([...begin, lost, '10:29:00.001 RO1 partner ready', end])).healthy).toBe(false);
  });

  test('is one whose flapping has died down, and one whose light was steady in time', async () => {
    const losses = [1, 3, 5].flatMap((m) => [
      `10:0${m}:00 RO1 partner not ready`,
      `10:0${m}:20 RO1 partner ready`,
    ]);
    expect((await diagnosed([...begin, ...losses, '10:20:00 RO1 configuration current'])).healthy).toBe(
      false,
    );
    expect((await diagnosed([...begin, ...losses, '11:00:00 RO1 configuration current'])).healthy).toBe(true);
    const steady = [
      restart,
      lost,
      '10:12:00 RO1 partner ready',
      '10:12:00 RO1 B light steady',
      '10:25:00 RO1 B light flashing',
    ];
    expect((await diagnosed([...begin, ...steady, end])).healthy).toBe(true);
  });

  test('is one whose late light became steady after all, or whose half is active by now', async () => {
    const late = [restart, lost, '10:10:00 RO1 B light flashing', '10:12:00 RO1 partner ready'];
    expect((await diagnosed([...begin, ...late, end])).healthy).toBe(false);
    expect((await diagnosed([...begin, ...late, '10:25:00 RO1 B light steady', end])).healthy).toBe(true);
    const taken = ['10:25:00 RO1 A role standby', '10:25:00 RO1 B role active'];
    expect((await diagnosed([...begin, ...late, ...taken, end])).healthy).toBe(true);
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
      'In 1 h 00 min of trouble 3 attempts were logged, 3 of them certainly failed; a partner was ready 1 time to compare with.',
      'These causes could not be judged: active-overloaded, memory-short.',
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

  test('of which a cause is sure: the answer names it, and what to check', async () => {
    const { sentences } = await diagnoseCase({ name: '', plus: ['06:59:50  RO1 B  links crossed'] });
    expect(sentences.slice(1)).toEqual([
      'The logs speak most for links-crossed: the network cables are exchanged.',
      'Check next: look at both network cables of both halves: which port, which network.',
    ]);
    const both = await diagnoseCase({
      name: '',
      plus: ['06:59:50  RO1 B  links crossed', '06:59:58  RO1 B  firmware 6.2.0'],
    });
    const lighter = await diagnoseCase({
      name: '',
      without: ['RO1 B  model'],
      plus: ['06:59:50  RO1 B  links crossed', '06:00:00  RO1 B  model Tern-2'],
    });
    // The models differed when it was ready too: 6.7 decibans are listed, and not named here.
    expect(lighter.causes.map((c) => c.id)).toEqual(['links-crossed', 'models-differ']);
    expect(lighter.sentences[1]).toBe(
      'The logs speak most for links-crossed: the network cables are exchanged.',
    );
    const heavier = await diagnoseCase({
      name: '',
      plus: ['06:59:50  RO1 B  links crossed', '06:59:58  RO1 B  model Tern-2'],
    });
    // 14.4 and 11.4 decibans.
    expect(heavier.causes.map((c) => c.id)).toEqual(['links-crossed', 'models-differ']);
    const others = [...heavier.doubted, ...heavier.unjudged].map((c) => c.id);
    for (const id of ['links-crossed', 'models-differ', 'too-little-data']) expect(others).not.toContain(id);
    expect(both.sentences[1]).toContain(
      'The logs speak most for firmware-differs, and also for links-crossed: ',
    );
  });
});
