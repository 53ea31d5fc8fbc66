import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse, diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { answerOf, diagnoseCase } from '../../support/check-cause.ts';
import { analyseTexts, journalText, readTexts } from '../../support/read-text.ts';
import { filesOf, healthyPair, wronglyFlashed } from '../../support/trouble-stories.ts';

const folder = join('samples', 'marrow-bay', 'wont-sync');

async function diagnoseDemo(...names: readonly string[]): Promise<Diagnosis> {
  const files = Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
  const phrasebook = readFileSync(join(folder, 'phrasebook.yaml'), 'utf8');
  return diagnose(analyse(await readTexts(files, { phrasebook })), null);
}

describe('the demo pair that will not synchronise', () => {
  test('the true cause comes first, with the lines of the network log', async () => {
    const { causes, stage, half, attempts } = await diagnoseDemo(
      'pretreat-poll.csv',
      'pretreat-journal.csv',
      'pretreat-network.log',
    );
    expect(causes[0]?.id).toBe('link-down');
    expect(causes[0]?.for[0].evidence.map((l) => l.file)).toContain('pretreat-network.log');
    // As the story tells it: the loss and five failed attempts, each seconds after network A of half B went down.
    expect(causes[0]?.for[0].statement).toMatch(/^6 of 6 .* after link-a of half B went down/);
    expect([stage, half, attempts.length]).toEqual(['synchronising', 'B', 5]);
  });
  test('without the network log it names that export', async () => {
    const { causes } = await diagnoseDemo('pretreat-poll.csv', 'pretreat-journal.csv');
    expect(causes.map((c) => c.id)).toEqual(['too-little-data']);
    expect(causes[0]?.next).toMatch(/^Export for PRETREAT, over the same time: the log of both networks/);
  });
});

describe('two causes at once', () => {
  test('both come before all others', async () => {
    const { causes } = await diagnoseCase({
      name: '',
      plus: ['06:59:59  RO1 B  firmware 6.2.0', '06:59:58  RO1 B  supply fault'],
    });
    expect(
      causes
        .slice(0, 2)
        .map((c) => c.id)
        .sort(),
    ).toEqual(['firmware-differs', 'supply-fault']);
    expect(causes.map((c) => c.rank)).toEqual(causes.map((_, index) => index + 1));
  });
  test('a condition comes before the pattern it may bring about', async () => {
    const aborts = ['07:20', '07:30', '07:40', '07:50'].flatMap((at) => [
      `${at}:00  RO1 B  sync start`,
      `${at}:40  RO1 B  sync failed`,
    ]);
    const { causes } = await diagnoseCase({
      name: '',
      without: ['sync'],
      plus: ['06:59:58  RO1 B  links crossed', ...aborts],
    });
    expect(causes.map((c) => c.id)).toEqual(['links-crossed', 'aborts-at-fixed-time']);
    expect(causes[1]?.decibans ?? 0).toBeGreaterThan(causes[0]?.decibans ?? 0);
  });
});

describe('which pair', () => {
  const troubled = wronglyFlashed(5);
  test('without a name it takes the one that is worst now, and says so', async () => {
    const { pair, chosen } = diagnose(await analyseTexts(troubled), null);
    expect(pair).toBe('PRETREAT');
    expect(chosen).toMatch(/^No pair was named: of 3 pairs, 2 healthy, PRETREAT is the worst now/);
  });
  test('a healthy pair has no causes, and nothing is said to be wrong', async () => {
    const diagnosis = diagnose(await analyseTexts(troubled), 'RO1');
    expect([diagnosis.healthy, diagnosis.causes, diagnosis.stage]).toEqual([true, [], 'steady']);
    // The poll of RO1 ends before the log of PRETREAT does.
    const [first, second, third] = answerOf(diagnosis);
    expect(first).toMatch(/^RO1 had a ready partner when last read, at [0-9:]+, for .* by then/);
    // Its story has two restarts, after each of which it was ready again.
    expect(second).toMatch(/^In .* of log none of 2 attempts is known to have failed\.$/);
    expect(third).toMatch(
      /^No trouble found with RO1 then; nothing was logged about it in the .* after that\.$/,
    );
  });
  test('of healthy pairs alone it says that all are', async () => {
    const analysed = await analyseTexts(filesOf({ stories: [healthyPair('RO1', 1), healthyPair('RO2', 2)] }));
    expect(diagnose(analysed, null)).toMatchObject({
      healthy: true,
      chosen: expect.stringContaining('all 2'),
    });
  });
  test('names the pairs there are where one is asked for that is not', async () => {
    const analysed = await analyseTexts(troubled);
    expect(() => diagnose(analysed, 'RO9')).toThrow(/Choose one of PRETREAT, RO1, RO2/);
  });
});

describe('what is trouble', () => {
  const ready = `10:00:00  RO1 A  role active
    10:00:00  RO1 B  role standby
    10:00:00  RO1    partner ready
    10:00:00  RO1 B  light steady`;
  const healthOf = async (more: string): Promise<boolean> =>
    diagnose(await analyseTexts({ 'ro1.log': journalText(`${ready}\n${more}`) }), null).healthy;
  test('no ready partner at the end; one that has not held for a minute', async () => {
    expect(await healthOf('10:30:00  RO1    partner not ready')).toBe(false);
    const back = '10:30:00  RO1    partner not ready\n10:31:00  RO1    partner ready\n';
    expect(await healthOf(`${back}10:31:59  RO1 A  light off`)).toBe(false);
    expect(await healthOf(`${back}10:32:00  RO1 A  light off`)).toBe(true);
  });
  test('a partner that comes and goes, though it is there now', async () => {
    const losses = ['10:30', '10:32', '10:34', '10:36'].map(
      (at) => `${at}:00  RO1    partner not ready\n${at}:20  RO1    partner ready`,
    );
    expect(await healthOf(`${losses.join('\n')}\n10:38:00  RO1 A  light off`)).toBe(false);
  });
  test('a light that is not steady five minutes after the start', async () => {
    const start =
      '10:30:00  RO1 B  module restart\n10:30:00  RO1 B  light flashing\n10:30:00  RO1    partner not ready';
    const back = `${start}\n10:32:00  RO1    partner ready`;
    expect(await healthOf(`${back}\n10:36:00  RO1 A  light off`)).toBe(false);
    expect(await healthOf(`${back}\n10:33:00  RO1 B  light steady\n10:36:00  RO1 A  light off`)).toBe(true);
  });
});
