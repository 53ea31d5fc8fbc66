import type { Fleet, PairReview } from '../vocabulary.ts';
import { toJson } from './json.ts';
import { bringUpDocument, findingDocument } from './verify-json.ts';

/** The JSON document of `fleet`. Source: design.md, section 8. */
export function fleetJson(fleet: Fleet): string {
  const { inputs, by, pairs, power, lossGroups, lossRatios, attempts, groups, logRank } = fleet;
  const { forecast, boutsNextYear } = fleet;
  const { drifts, months, census, alike, findings } = fleet;
  return toJson({
    schema: 'steadypair/fleet/1',
    inputs,
    by,
    pairs: pairs.map(pairDocument),
    power,
    lossGroups,
    lossRatios,
    attempts: attempts.map(bringUpDocument),
    groups,
    logRank,
    forecast,
    boutsNextYear,
    drifts,
    months,
    census,
    alike,
    findings: findings.map(findingDocument),
  });
}

function pairDocument(pair: PairReview): unknown {
  return { ...pair, flapping: pair.flapping.map(findingDocument) };
}
