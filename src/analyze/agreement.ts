import { type Difference, differencesOf } from '../timeline/differences.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { type Finding, sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

const ids = { firmware: 'firmware-mismatch', model: 'model-mismatch' } as const;

/** Whether both halves reported the same firmware and model, and whether a switchover landed on one that did not. */
export const agreement: Analyzer = {
  meta: {
    id: 'agreement',
    question: 'Did both halves report the same firmware and model?',
    needs: ['firmware'],
    findings: ['firmware-mismatch', 'model-mismatch'],
  },
  analyze(facts) {
    const spans = [...differencesOf(facts, 'firmware'), ...differencesOf(facts, 'model')];
    const unknown = facts.switchovers.filter((s) => s.firmwareMatched === null).length;
    return {
      checked: spans.length + facts.switchovers.length - unknown,
      notObserved: unknown,
      findings: [...spans.map((s) => toFinding(facts.timeline.pair, s)), ...onto(facts)],
    };
  },
};

function toFinding(pair: string, difference: Difference): Finding {
  const { signal, from, to, open, isExpected, values, events } = difference;
  const seconds = (to - from) / 1000;
  const end = open ? 'up to the end of the log' : `for ${sayDuration(seconds)}`;
  return {
    id: ids[signal],
    severity: isExpected ? 'info' : 'warning',
    pair,
    half: null,
    from,
    to,
    statement: `The halves reported different ${signal === 'model' ? 'models' : 'firmware'} (${values.join(' and ')}) ${end}.`,
    figures: { seconds },
    evidence: linesOfAll(events),
  };
}

function onto({ switchovers }: PairFacts): readonly Finding[] {
  return switchovers
    .filter((s) => s.firmwareMatched === false)
    .map((s) => ({
      id: 'firmware-mismatch',
      severity: 'warning',
      pair: s.pair,
      half: s.toHalf,
      from: s.at.earliest,
      to: s.at.time,
      statement: `The switchover to half ${s.toHalf} landed on firmware that differed from that of half ${s.fromHalf}.`,
      figures: {},
      evidence: s.evidence,
    }));
}
