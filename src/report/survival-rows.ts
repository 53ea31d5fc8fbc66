import type { SurvivalRow } from '../charts/sync-time-survival.ts';
import {
  type BringUpCause,
  type Fleet,
  type GroupReview,
  type SurvivalPoint,
  sayLimit,
} from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { asFigure } from './json.ts';
import { labelPlaces } from './label-places.ts';
import { mostOf } from './most-of.ts';

/** Where the curves end, in limits for a steady light: what comes after is so rare and so late that it would hide all else. */
const drawnLimits = 4;
/** Steps of one curve, nearly one for each pixel. */
const mostSteps = 400;

/** The curves of the groups that saw a bring-up by one cause become ready, of many the slowest, as far as the picture goes. */
export function survivalRows(
  { groups, lightLimitSeconds }: Pick<Fleet, 'groups' | 'lightLimitSeconds'>,
  cause: BringUpCause,
): readonly SurvivalRow[] {
  const drawnTo = drawnLimits * lightLimitSeconds;
  const own = mostOf(
    groups.filter((g) => g.cause === cause && g.survival.length > 0),
    (g) => g.median.value ?? Number.MAX_VALUE,
  );
  const isCut = own.some((g) => g.survival.some((p) => p.seconds > drawnTo));
  const curves = own.map((group, index) =>
    goOn(curveOf(group, isCut, drawnTo, 1 - (index + 1) / (own.length + 1)), lightLimitSeconds),
  );
  const places = labelPlaces(curves.map(heightOfLabel), 8, 100);
  return curves.flatMap(({ name, attempts, censored, superseded, points, labelled }, index) =>
    points.map(({ seconds, surviving, low, high }, at) => ({
      group: name,
      attempts,
      censored,
      superseded,
      seconds,
      percent: asFigure(surviving * 100),
      low: asFigure((low ?? surviving) * 100),
      high: asFigure((high ?? surviving) * 100),
      label: at === labelled ? labelOf(name, attempts, curves.length) : '',
      labelAt: places[index] ?? 0,
      drawnTo: isCut ? drawnTo : null,
      limit: lightLimitSeconds,
      limitWord: index === 0 && at === 0 ? sayLimit(lightLimitSeconds) : '',
    })),
  );
}

/** Of many curves the name alone: more would be crossed by the next curve, and the caption has the sample. */
function labelOf(name: string, attempts: number, curves: number): string {
  return curves > 2 ? name : `${name} (n = ${attempts})`;
}

interface Curve {
  readonly name: string;
  readonly attempts: number;
  readonly censored: number;
  readonly superseded: number;
  readonly points: readonly SurvivalPoint[];
  /** The point at which the label stands. */
  readonly labelled: number;
}

/** Labels step down the curves, so that those of groups that lie close do not meet: each where its curve falls to `level`, or ends. */
function curveOf(
  { group, attempts, censored, superseded, survival }: GroupReview,
  isCut: boolean,
  drawnTo: number,
  level: number,
): Curve {
  const seen = survival.filter((p) => p.seconds <= drawnTo);
  const begun = [{ seconds: 0, surviving: 1, low: 1, high: 1 }, ...thinned(seen)];
  const end = begun.at(-1);
  const goesOn = isCut && end !== undefined && end.surviving > 0;
  const points = goesOn ? [...begun, { ...end, seconds: drawnTo }] : begun;
  const fallen = points.findIndex((p) => p.surviving <= level + 1e-9);
  const labelled = fallen === -1 ? points.length - 1 : fallen;
  return { name: terminal(group), attempts, censored, superseded, points, labelled };
}

/** A curve that superseded attempts hold up, and of which all is known, goes on as high as it is up to the limit. */
function goOn(curve: Curve, limit: number): Curve {
  const end = curve.points.at(-1);
  const isHeld = curve.superseded > 0 && curve.censored === 0;
  if (end === undefined || !isHeld || end.surviving === 0 || end.seconds >= limit) return curve;
  return { ...curve, points: [...curve.points, { ...end, seconds: limit }] };
}

function heightOfLabel({ points, labelled }: Curve): number {
  return (points[labelled]?.surviving ?? 0) * 100;
}

/** A curve of very many steps, so many of them as the picture can show, the last among them. */
function thinned<T>(steps: readonly T[]): readonly T[] {
  const stride = Math.ceil(steps.length / mostSteps);
  return steps.filter((_, index) => index % stride === 0 || index === steps.length - 1);
}
