import { defaultRules } from '../timeline/rules.ts';
import { type BringUp, type Finding, sayDuration, sayLimit } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';
import type { Limits } from './limits.ts';

/** Whether the standby's light became steady within the limit after each start. */
export const stableLight: Analyzer = {
  meta: {
    id: 'stable-light',
    question: `Was the light steady within ${sayLimit(defaultRules.lightLimitSeconds)} of each start?`,
    needs: ['light'],
    findings: ['light-timeout'],
  },
  analyze({ bringUps }, limits) {
    const judged = bringUps.filter((b) => b.light.outcome === 'within' || b.light.outcome === 'exceeded');
    return {
      checked: judged.length,
      notObserved: bringUps.length - judged.length,
      findings: judged.filter((b) => b.light.outcome === 'exceeded').map((b) => toFinding(b, limits)),
    };
  },
};

function toFinding(bringUp: BringUp, limits: Limits): Finding {
  const { pair, half, start, light, watchedTo, lightEvidence } = bringUp;
  const limitSeconds = limits.rules.lightLimitSeconds;
  const took = light.censored
    ? `was not steady within the observed ${sayDuration(light.seconds ?? 0)}`
    : `was steady only after ${sayDuration(light.low ?? 0)} or more`;
  return {
    id: 'light-timeout',
    severity: 'critical',
    pair,
    half,
    from: start.time,
    to: light.censored ? watchedTo : start.time + (light.seconds ?? 0) * 1000,
    statement: `The light of half ${half} ${took}; the limit is ${sayDuration(limitSeconds)}. Stop and call for support.`,
    figures: { seconds: light.seconds, low: light.low, high: light.high, limitSeconds },
    evidence: lightEvidence,
  };
}
