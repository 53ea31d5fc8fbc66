import type { Fleet } from '../../src/vocabulary.ts';

/** A review of no pair, on which a test puts what it is about. */
export const emptyFleet: Fleet = {
  ...{
    inputs: [],
    lightLimitSeconds: 300,
    by: 'firmware',
    pairs: [],
    power: null,
    lossGroups: [],
    lossRatios: [],
    attempts: [],
    groups: [],
    logRank: null,
  },
  ...{ forecast: null, boutsNextYear: null, drifts: [], months: [], alike: [], census: [], findings: [] },
};
