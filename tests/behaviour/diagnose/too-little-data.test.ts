import { describe, expect, test } from 'vitest';
import { tooLittleData } from '../../../src/diagnose/too-little-data.ts';
import { diagnose } from '../../../src/pipeline.ts';
import { answerOf, diagnoseCase, pollFile, pollOf } from '../../support/check-cause.ts';
import { pollText } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

describe(tooLittleData.meta.id, () => {
  test('comes first where all that is logged is in order, and names what was never logged', async () => {
    const diagnosis = await diagnoseCase({ name: '' });
    const { causes, unjudged } = diagnosis;
    expect(causes.map((c) => c.id)).toEqual(['too-little-data']);
    expect(causes[0]?.next).toContain('a poll of load and memory (load, free-memory)');
    expect(unjudged.map((u) => u.id)).toEqual(['active-overloaded', 'memory-short']);
    expect(answerOf(diagnosis)[1]).toBe('No cause reaches 10 to 1: the logs do not show why.');
  });
  test('stands aside where a cause reaches ten to one', async () => {
    const { causes } = await diagnoseCase({ name: '', plus: ['06:59:50  RO1 B  links crossed'] });
    expect(causes.map((c) => c.id)).toEqual(['links-crossed']);
  });
  test('asks for a log of readiness where there is none, and ranks nothing else', async () => {
    const { causes, doubted, unjudged } = await diagnoseCase({
      name: '',
      without: ['partner'],
      plus: ['06:59:50  RO1 B  links crossed'],
    });
    expect(causes.map((c) => c.id)).toEqual(['too-little-data']);
    // Nothing was weighed, so nothing is doubted either.
    expect(doubted).toEqual([]);
    expect(unjudged.find((u) => u.id === 'links-crossed')?.missing).toEqual(['partner-ready']);
    expect(causes[0]?.next).toContain('a log of readiness (partner-ready');
  });
  test('what was logged, but not of the half in question, is not called never logged', async () => {
    // The load of the standby says nothing of the active half.
    const { doubted, unjudged, causes } = await diagnoseCase({
      name: '',
      files: pollFile(pollOf('RO1-B', 'load', [[0, 20]])),
    });
    expect(unjudged.map((u) => u.id)).toEqual(['memory-short']);
    expect(doubted.find((d) => d.id === 'active-overloaded')?.against[0]?.statement).toBe(
      'What was logged of load does not cover the half or the times in question.',
    );
    expect(causes[0]?.next).toContain('load');
  });
  test('asks to wait where no attempt has lasted to the limit for the light', async () => {
    const { causes } = await diagnoseCase({
      name: '',
      without: ['sync', '07:00:00', '08:00:00'],
      plus: ['07:00:00  RO1    partner not ready', '07:02:00  RO1 A  light off'],
    });
    expect(causes[0]?.next).toMatch(/^No attempt is known to have failed yet: wait until 5 min 00 s/);
  });
});

describe('where no cause is found', () => {
  test('one attempt is counted as one, and the answer asks for more of the same where everything was logged', async () => {
    const gauges = pollFile(
      pollOf('RO1-A', 'load', [[0, 35]]),
      pollOf('RO1-A', 'free-memory', [[0, 4e6]]),
      pollOf('RO1-B', 'free-memory', [[0, 4e6]]),
    );
    const { causes } = await diagnoseCase({
      name: '',
      without: ['sync'],
      plus: ['07:01:00  RO1 B  sync start', '07:03:00  RO1 B  sync failed'],
      files: gauges,
    });
    expect(causes[0]?.for.map((p) => p.statement)).toEqual([
      'In 1 h 00 min one attempt was logged, which failed after 2 min 00 s; for comparison, a partner was ready once.',
    ]);
    expect(causes[0]?.next).toMatch(/^All signals needed were logged for RO1, but too little happened: /);
  });

  test('times at which a partner was ready are counted', async () => {
    const { causes } = await diagnoseCase({
      name: '',
      plus: ['06:30:00  RO1    partner not ready', '06:33:00  RO1    partner ready'],
    });
    expect(causes[0]?.for[0].statement).toContain('; for comparison, a partner was ready twice.');
  });

  test('a second module that was seen is no ready partner to compare with', async () => {
    const lines = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:00:00 RO1 partner present',
      '10:10:00 RO1 partner absent',
      '10:40:00 RO1 A light off',
    ];
    const { causes, stage } = diagnose(await analyseTexts({ 'a.log': journalText(lines.join('\n')) }), 'RO1');
    expect([stage, causes[0]?.for[0].statement]).toEqual([
      'absent',
      'In 30 min 00 s no attempt was logged; for comparison, no partner stayed ready.',
    ]);
  });

  test('the answer asks for no patience where no attempt was logged at all', async () => {
    const lines = [
      '06:00:00 RO1 partner ready',
      '07:00:00 RO1 partner not ready',
      '07:02:00 RO1 configuration current',
    ];
    const { causes } = diagnose(await analyseTexts({ 'a.log': journalText(lines.join('\n')) }), 'RO1');
    expect(causes[0]?.next).toMatch(/^Export for RO1, over the same time: /);
  });

  test('polls alone say nothing of restarts and aborts, which only a journal tells', async () => {
    const poll = pollText(['06:00:00', '08:00:00'], 60, [
      ['RO1', 'partner-ready', ['06:00:00', 'yes'], ['07:00:00', 'no']],
    ]);
    const { unjudged } = diagnose(await analyseTexts({ 'poll.csv': poll }), 'RO1');
    expect(unjudged.map((u) => u.id)).toEqual(
      expect.arrayContaining(['restart-loop', 'aborts-at-fixed-time']),
    );
  });
});
