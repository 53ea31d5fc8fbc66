import { describe, expect, test } from 'vitest';
import type { Analyzer } from '../../../src/analyze/analyzer.ts';
import { askIf } from '../../../src/analyze/ask-if.ts';
import { defaultLimits } from '../../../src/analyze/limits.ts';
import { runAnalyzers } from '../../../src/analyze/run-analyzers.ts';
import type { Finding } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const { facts } = await analyseTexts({
  'journal.log': journalText(
    ['RO1', 'RO2', 'RO3'].map((pair) => `10:00:00  ${pair}  partner ready`).join('\n'),
  ),
});

/** Asks one question of each pair that has a chance here; what it tells is the chance among all that were asked. */
function asking(id: string, chances: Readonly<Record<string, number>>, told?: () => Finding): Analyzer {
  return {
    meta: { id, question: id, needs: [], findings: ['rhythm'] },
    analyze: ({ timeline: { pair } }, limits) => {
      const p = chances[pair];
      const finding = (): Finding => ({
        ...{ id: 'rhythm', severity: 'warning', pair, half: null, from: 0, to: 0 },
        statement: 'Losses come (',
        figures: {},
        evidence: [{ file: 'journal.log', line: 1, text: '' }],
      });
      const questions = p === undefined ? [] : [askIf(p, limits, told ?? finding)];
      return { checked: 1, notObserved: 0, findings: [], questions };
    },
  };
}

function toldBy(...analyzers: readonly Analyzer[]): readonly (readonly [string, number])[] {
  return runAnalyzers(analyzers, facts, defaultLimits).flatMap((answer) =>
    answer.findings.map(
      (f) => [`${answer.analyzer} ${f.pair}`, Number(Number(f.figures.p).toFixed(9))] as const,
    ),
  );
}

describe('questions of chance', () => {
  // Three questions at 1 %: 0.003 * 3 = 0.009 holds; of the two left 0.004 * 2 = 0.008, told as the 0.009 before it; the last
  // 0.02 does not.
  test('share the significance over all pairs, the clearest answer first', () => {
    expect(toldBy(asking('one', { RO1: 0.004, RO2: 0.003, RO3: 0.02 }))).toEqual([
      ['one RO1', 0.009],
      ['one RO2', 0.009],
    ]);
  });
  test('that miss their share are not told', () => {
    expect(toldBy(asking('one', { RO1: 0.004, RO2: 0.5, RO3: 0.5 }))).toEqual([]);
    expect(toldBy(asking('one', { RO1: 0.004, RO2: 0.5 }))).toEqual([['one RO1', 0.008]]);
  });
  test('of one analyzer do not count with those of another', () => {
    const found = toldBy(asking('one', { RO1: 0.01 }), asking('two', { RO1: 0.9, RO2: 0.9 }));
    expect(found).toEqual([['one RO1', 0.01]]);
  });
  test('whose finding can not be told are reported as failed', () => {
    const broken = asking('one', { RO1: 0.001 }, () => {
      throw new RangeError('no loss');
    });
    const answers = runAnalyzers([broken, asking('two', { RO1: 0.001 })], facts, defaultLimits);
    const own = answers.filter((a) => a.pair === 'RO1');
    expect(own.map((a) => [a.analyzer, a.failed, a.findings.length])).toEqual([
      ['one', 'no loss', 0],
      ['two', null, 1],
    ]);
  });
});
