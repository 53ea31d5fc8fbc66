import { endLines, linesOf } from '../timeline/evidence.ts';
import { stepAt, track } from '../timeline/tracks.ts';
import type { Check } from './check.ts';

export const configurationCurrent: Check = {
  id: 'configuration-current',
  title: 'Nothing left pending',
  judge({ facts, to }) {
    const steps = track(facts.timeline, null, 'configuration');
    const step = stepAt(steps, to);
    if (steps.length === 0) {
      return {
        status: 'not-observed',
        statement: 'The configuration state was never logged.',
        evidence: endLines(facts.timeline),
      };
    }
    if (step === undefined) {
      return {
        status: 'inconclusive',
        statement: 'The configuration state at the end is not known.',
        evidence: endLines(facts.timeline),
      };
    }
    return step.value === 'pending'
      ? { status: 'fail', statement: 'At the end a configuration is still pending.', evidence: linesOf(step) }
      : { status: 'pass', statement: 'At the end nothing is pending.', evidence: linesOf(step) };
  },
};
