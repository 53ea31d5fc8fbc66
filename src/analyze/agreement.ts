import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { track, valueAt } from '../timeline/tracks.ts';
import { type Finding, type NonEmpty, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

const ids = { firmware: 'firmware-mismatch', model: 'model-mismatch' } as const;
type Compared = keyof typeof ids;

/** Whether both halves reported the same firmware and model, and whether a switchover landed on one that did not. */
export const agreement: Analyzer = {
  meta: {
    id: 'agreement',
    question: 'Did both halves report the same firmware and model?',
    needs: ['firmware'],
    findings: ['firmware-mismatch', 'model-mismatch'],
  },
  analyze(facts) {
    const spans = [...differences(facts, 'firmware'), ...differences(facts, 'model')];
    const unknown = facts.switchovers.filter((s) => s.firmwareMatched === null).length;
    return {
      checked: spans.length + facts.switchovers.length - unknown,
      notObserved: unknown,
      findings: [...spans.map((s) => toFinding(facts, s)), ...onto(facts)],
    };
  },
};

interface Difference {
  readonly signal: Compared;
  readonly from: number;
  readonly to: number;
  readonly open: boolean;
  readonly values: readonly string[];
  readonly events: NonEmpty<TimelineEvent>;
}

function differences({ timeline }: PairFacts, signal: Compared): readonly Difference[] {
  const tracks = timeline.halves.map((half) => track(timeline, half, signal));
  const moments = tracks.flat().sort((a, b) => a.time - b.time);
  const found: Difference[] = [];
  let open: { from: TimelineEvent; values: readonly string[] } | null = null;
  for (const [index, moment] of moments.entries()) {
    if (moments[index + 1]?.time === moment.time) continue;
    const values = tracks.map((steps) => valueAt(steps, moment.time)).filter((value) => value !== null);
    const differs = values.length > 1 && new Set(values).size > 1;
    if (differs && open === null) open = { from: moment, values };
    if (differs || open === null) continue;
    found.push({
      signal,
      from: open.from.time,
      to: moment.time,
      open: false,
      values: open.values,
      events: [open.from, moment],
    });
    open = null;
  }
  if (open === null) return found;
  return [
    ...found,
    { signal, from: open.from.time, to: timeline.to, open: true, values: open.values, events: [open.from] },
  ];
}

/** A difference while a swap is under way is expected, unless it lasts to the end. */
function toFinding({ timeline, moduleChanges }: PairFacts, difference: Difference): Finding {
  const { signal, from, to, open, values, events } = difference;
  const ofSwap = moduleChanges.some(
    (c) =>
      (c.inserted ?? c.removed).earliest <= to &&
      c.removed.earliest <= from + 86_400_000 &&
      c.removed.earliest <= to,
  );
  const seconds = (to - from) / 1000;
  const end = open ? 'up to the end of the log' : `for ${sayDuration(seconds)}`;
  return {
    id: ids[signal],
    severity: ofSwap && !open ? 'info' : 'warning',
    pair: timeline.pair,
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
