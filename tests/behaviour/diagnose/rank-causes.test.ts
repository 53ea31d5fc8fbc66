/** What a weight decides: the order of causes, whether one is listed, and whether one is named. */
import { describe, expect, test } from 'vitest';
import type { Cause, Trouble } from '../../../src/diagnose/cause.ts';
import { defaultDiagnoseLimits } from '../../../src/diagnose/limits.ts';
import { rankCauses } from '../../../src/diagnose/rank-causes.ts';
import { sayAnswer } from '../../../src/diagnose/say-answer.ts';
import { tooLittleData } from '../../../src/diagnose/too-little-data.ts';
import { fleetOf, troubleOf } from '../../../src/diagnose/trouble.ts';
import { sayWeight } from '../../../src/report/say-weight.ts';
import { saySentence } from '../../../src/report/sentences.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

const facts = await factsOfPair([
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 partner ready',
  '10:10:00 RO1 partner not ready',
  '10:30:00 RO1 A light off',
]);
const found = troubleOf(facts, fleetOf([facts], defaultRules), defaultDiagnoseLimits, defaultRules);
if (found === null) throw new Error('The pair is healthy.');
const trouble: Trouble = found;

/** A cause of some weight. */
function weighing(id: string, decibans: number, kind: Cause['meta']['kind'] = 'condition'): Cause {
  const point = { statement: `${id}.`, evidence: trouble.evidence };
  const meta = { id, title: `The ${id}`, kind, explains: '', shows: '', needs: [], next: `Look at ${id}.` };
  return { meta, weigh: () => ({ decibans, for: [point], against: [] }) };
}

const ranked = (...causes: readonly Cause[]): readonly string[] =>
  rankCauses([...causes, tooLittleData], trouble).causes.map((c) => `${c.rank} ${c.id}`);

describe('a weight', () => {
  test('of 3 decibans is listed, of less only doubted', () => {
    expect(ranked(weighing('link', 3))).toEqual(['1 too-little-data', '2 link']);
    const { causes, doubted } = rankCauses([weighing('link', 2.999)], trouble);
    expect([causes, doubted.map((d) => d.id)]).toEqual([[], ['link']]);
  });
  test('of 10 decibans is a cause found, and there is not too little data; of less there is', () => {
    expect(ranked(weighing('link', 10))).toEqual(['1 link']);
    expect(ranked(weighing('link', 9.999))).toEqual(['1 too-little-data', '2 link']);
  });
  test('ranks the module or slot that a trouble follows between conditions and patterns', () => {
    const place = weighing('module', 20, 'place');
    expect(ranked(weighing('loop', 30, 'pattern'), place, weighing('link', 10))).toEqual([
      '1 link',
      '2 module',
      '3 loop',
    ]);
  });
  test('ranks conditions before patterns from 10 decibans on, and below by weight alone', () => {
    const pattern = weighing('loop', 30, 'pattern');
    expect(ranked(pattern, weighing('link', 10))).toEqual(['1 link', '2 loop']);
    expect(ranked(weighing('link', 9.9), pattern)).toEqual(['1 loop', '2 link']);
    expect(ranked(weighing('link', 10), weighing('supply', 10.1))).toEqual(['1 supply', '2 link']);
    expect(ranked(weighing('loop', 8, 'pattern'), weighing('link', 7))).toEqual([
      '1 too-little-data',
      '2 loop',
      '3 link',
    ]);
  });
  test('is said as odds in words: strong from 10, decisive from 20', () => {
    // 10 to the power of a tenth of the decibans.
    expect([3, 9.9, 10, 19.9, 20, 30].map(sayWeight)).toEqual([
      'weak, 2 to 1',
      'weak, 10 to 1',
      'strong, 10 to 1',
      'strong, 98 to 1',
      'decisive, 100 to 1',
      'decisive, 1000 to 1',
    ]);
  });
});

describe('the answer', () => {
  const said = (...causes: readonly Cause[]): readonly string[] =>
    sayAnswer(trouble, null, [], rankCauses([...causes, tooLittleData], trouble).causes, 10)
      .map((sentence) => saySentence(sentence, 'UTC', trouble.from))
      .slice(1);
  test('names a second cause from 10 decibans on', () => {
    expect(said(weighing('link', 20), weighing('supply', 10))).toEqual([
      'Most likely cause: the link (100 to 1); also possible: the supply (10 to 1).',
      'Check next: look at link.',
    ]);
    expect(said(weighing('link', 20), weighing('supply', 9.9))[0]).toBe(
      'Most likely cause: the link (100 to 1).',
    );
  });
  test('says that none is found where the heaviest stays below 10', () => {
    expect(said(weighing('link', 9.9))[0]).toBe('No cause reaches 10 to 1: the logs do not show why.');
  });
});

describe('what is said of a pair of which it is not known whether it is ready', () => {
  test('no cause is weighed, whatever its signals say', () => {
    const unknown: Trouble = { ...trouble, kind: 'unknown' };
    const { causes, unjudged } = rankCauses([weighing('link', 30), tooLittleData], unknown);
    expect(causes.map((c) => c.id)).toEqual(['too-little-data']);
    expect(unjudged.map((u) => [u.id, u.missing])).toEqual([['link', ['partner-ready']]]);
  });
});
