import { type Finding, type Switchover, sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

/** Whether each switchover was commanded, onto a ready partner. */
export const switchovers: Analyzer = {
  meta: {
    id: 'switchovers',
    question: 'Was every switchover commanded, and onto a ready partner?',
    needs: ['role'],
    findings: ['switchover-unready', 'switchover-uncommanded'],
  },
  analyze({ switchovers: all }) {
    const judged = all.filter((s) => s.partnerReady !== null);
    return {
      checked: judged.length,
      notObserved: all.length - judged.length,
      findings: all.flatMap((s) => [
        ...(s.partnerReady === false ? [unready(s)] : []),
        ...(s.commanded === false ? [uncommanded(s)] : []),
      ]),
    };
  },
};

function unready(switchover: Switchover): Finding {
  return {
    ...frame(switchover),
    id: 'switchover-unready',
    severity: 'critical',
    statement: `The switchover from half ${switchover.fromHalf} to half ${switchover.toHalf} came while the partner was not ready.`,
  };
}

function uncommanded(switchover: Switchover): Finding {
  const { readySeconds, fromHalf, toHalf } = switchover;
  const ready = readySeconds === null ? '' : `; the partner had been ready for ${sayDuration(readySeconds)}`;
  return {
    ...frame(switchover),
    id: 'switchover-uncommanded',
    severity: 'warning',
    statement: `The switchover from half ${fromHalf} to half ${toHalf} was not commanded: no command was logged before it${ready}.`,
  };
}

function frame({
  pair,
  toHalf,
  at,
  readySeconds,
  gapSeconds,
  evidence,
}: Switchover): Omit<Finding, 'id' | 'severity' | 'statement'> {
  return {
    pair,
    half: toHalf,
    from: at.earliest,
    to: at.time,
    figures: { readySeconds, gapLowSeconds: gapSeconds.low, gapHighSeconds: gapSeconds.high },
    evidence,
  };
}
