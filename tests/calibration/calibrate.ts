import { seeded } from '../../samples/random.ts';
import { binomialAtMost } from '../../src/statistics/distributions.ts';
import { atLeast } from '../../src/statistics/rate-ratio.ts';
import { studies } from './studies.ts';
import type { Trial } from './study.ts';

/**
 * Every study as a table of what is promised against what was found: `npm run calibration`, `-- 0.1` for a shorter run,
 * `-- 1 stands` for the studies whose name begins so. Each study starts from the same seed.
 */
export function calibrate(scale = '1', name = '', seed = '1'): string {
  const chosen = studies.filter((study) => study.name.startsWith(name));
  const rows = chosen.flatMap((study) =>
    study.run(seeded(Number(seed)), Number(scale)).map((trial) => ({ name: study.name, trial })),
  );
  const off = rows.filter(({ trial }) => !isHeld(trial));
  const unexplained = off.filter(({ trial }) => trial.because === undefined).length;
  return [
    ...chosen.flatMap((study) => [
      study.name,
      ...rows.filter((row) => row.name === study.name).map(({ trial }) => `  ${lineOf(trial)}`),
    ]),
    `${rows.length} promises tried, ${off.length - unexplained} not held for the reason given, ${unexplained} not held without one; seed ${seed}, scale ${scale}`,
  ].join('\n');
}

/** One in 740, as three standard errors leave on one side: of some hundred promises that hold, all are expected to be within. */
const tail = 0.00135;

/** Whether so many hits are as the promise has it, or farther off than the simulation itself brings; exact for few cases too. */
export function isHeld({ promised, hits, cases }: Trial): boolean {
  return atLeast(hits, cases, promised.high) >= tail && binomialAtMost(hits, cases, promised.low) >= tail;
}

function lineOf(trial: Trial): string {
  const { setting, promised, hits, cases } = trial;
  const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
  const word = isHeld(trial) ? 'held' : trial.because === undefined ? 'OFF' : `off: ${trial.because}`;
  const range =
    promised.low <= 0
      ? `at most ${percent(promised.high)}`
      : promised.high >= 1
        ? `at least ${percent(promised.low)}`
        : `${percent(promised.low)} to ${percent(promised.high)}`;
  return [
    setting.padEnd(44),
    range.padEnd(18),
    percent(hits / cases).padStart(7),
    `of ${cases}`.padStart(9),
    word,
  ].join('  ');
}
