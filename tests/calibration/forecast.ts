import type { Random } from '../../samples/random.ts';
import { forecastOf } from '../../src/fleet/forecast.ts';
import { defaultFleetLimits } from '../../src/fleet/limits.ts';
import type { BringUp } from '../../src/vocabulary.ts';
import { madeBringUp } from '../support/made-bring-up.ts';
import { durations } from './draws.ts';
import type { Study, Trial } from './study.ts';

const usualCases = 300;
/** Fewer rounds than the program takes, for the sake of time: the interval is as right, but for its last digits. */
const limits = {
  ...defaultFleetLimits,
  forecast: { ...defaultFleetLimits.forecast, rounds: 400 },
};
const pasts = [20, 50];
const futures = [1, 10, 40];

/** The intervals for campaigns, against campaigns drawn from the same durations and failures. */
export const campaignForecast: Study = {
  name: 'forecast: campaigns that take as long as the 90 % interval says',
  run: (random, scale) => {
    const cases = Math.max(20, Math.round(usualCases * scale));
    const settings = Object.keys(durations).flatMap((name) =>
      [0, 0.15].flatMap((failing) => pasts.map((past) => ({ name, failing, past, cases }))),
    );
    const seldom = pasts.map((past) => ({ name: 'lognormal', failing: 0.05, past, cases }));
    return [
      tooFew(random, { name: 'lognormal', failing: 0.15, past: 4, cases }),
      ...[...settings, ...seldom].flatMap((setting) => trialsOf(random, setting)),
    ];
  },
};

interface Setting {
  readonly name: string;
  readonly failing: number;
  readonly past: number;
  readonly cases: number;
}

function trialsOf(random: Random, setting: Setting): readonly Trial[] {
  const { name, failing, past, cases } = setting;
  const hits = futures.map(() => 0);
  for (let one = 0; one < cases; one += 1) {
    const seen = Array.from({ length: past }, () => reflash(random, setting));
    const last = forecastOf(seen, futures.at(-1) ?? 0, limits);
    const truth = campaign(random, setting);
    for (const [index, swaps] of futures.entries()) {
      const step = last?.steps.find((s) => s.swaps === swaps);
      const hours = truth[index] ?? 0;
      if (step === undefined || step.low === null || step.high === null) continue;
      if (hours >= step.low && hours <= step.high) hits[index] = (hits[index] ?? 0) + 1;
    }
  }
  return futures.map((swaps, index) => ({
    setting: `${name}, ${past} reflashes${failing === 0 ? '' : `, ${100 * failing} % fail`}, ${swaps === 1 ? 'one swap' : `${swaps} swaps`}`,
    promised: { low: 0.87, high: 0.93 },
    hits: hits[index] ?? 0,
    cases,
    ...becauseOf(setting),
  }));
}

/** Of four reflashes no interval is given. */
function tooFew(random: Random, setting: Setting): Trial {
  const seen = Array.from({ length: setting.cases }, () =>
    Array.from({ length: setting.past }, () => reflash(random, setting)),
  );
  const none = seen.filter((past) => (forecastOf(past, 10, limits)?.low ?? null) === null);
  return {
    setting: 'lognormal, 4 reflashes: no interval is given',
    promised: { low: 1, high: 1 },
    hits: none.length,
    cases: setting.cases,
  };
}

/** Where the promise is known not to hold. */
function becauseOf({ name, failing, past }: Setting): Pick<Trial, 'because'> {
  if (name === 'two far peaks' || (name === 'bimodal' && past <= 20))
    return { because: 'a few slow ones decide the scatter, so it errs on the wide side' };
  // (1 - failing)^past: in 36 of 100 cases none of 20 has failed, in 8 none of 50.
  if (failing > 0 && (1 - failing) ** past > 0.05)
    return { because: 'often none has failed yet: then the review says that it counts on none' };
  return {};
}

/** A failed reflash is watched between five minutes and the time at which one stops. */
function reflash(random: Random, { name, failing }: Setting): BringUp {
  const { stopSeconds } = defaultFleetLimits.forecast;
  if (random() < failing)
    return madeBringUp({ seconds: 300 + random() * (stopSeconds - 300), outcome: 'superseded' });
  return madeBringUp({ seconds: Math.max(1, durations[name]?.(random) ?? 0), outcome: 'settled' });
}

/** Hours until both modules of so many swaps have settled. */
function campaign(random: Random, setting: Setting): readonly number[] {
  let [seconds, settled] = [0, 0];
  return futures.map((swaps) => {
    while (settled < 2 * swaps) {
      const one = reflash(random, setting);
      seconds += one.sync.seconds ?? 0;
      if (one.outcome === 'settled') settled += 1;
    }
    return seconds / 3600;
  });
}
