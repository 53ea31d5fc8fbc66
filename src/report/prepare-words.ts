import {
  type ExpectedExposure,
  type HoldPointId,
  type ProcedureStepId,
  type SheetHalf,
  sayDuration,
  type Told,
  type WorkSheet,
  type WorkStep,
} from '../vocabulary.ts';
import { sayCount, sayInstant } from './words.ts';

/** The answer of a work sheet: which half was standby, when and how long ago; why none is named. One or two sentences. */
export function sayStandby(sheet: WorkSheet, zone: string): string {
  const { pair, standby, halves } = sheet;
  const { half, restsOn, seenAt } = standby;
  const at = sayInstant(seenAt.time, zone);
  const age = sayAge(sheet);
  if (half !== null) {
    const other = halves.find((h) => h.half !== half)?.half ?? 'not known';
    const concluded =
      restsOn === 'other-half'
        ? ` That is concluded from the role of half ${other}: no line states its own.`
        : restsOn === 'light'
          ? ' That is concluded from its light: no line states a role.'
          : '';
    return `Half ${half} of ${pair} was standby at ${at}, ${age}.${concluded}${sayStale(sheet)}`;
  }
  switch (standby.because) {
    case 'too-old':
      return `Which half of ${pair} is standby is not named: its role was last read at ${at}, ${age}. Export the logs again.`;
    case 'ahead':
      return `Which half of ${pair} is standby is not named: its role was last read at ${at}, ${age}. Set the time zone of the logs or the clock of this computer right.`;
    case 'several':
      return `Which half of ${pair} is standby is not known: at ${at}, ${age}, ${sayRoles(halves)}.`;
    case 'none':
      return `No half of ${pair} was standby at ${at}, ${age}: ${sayRoles(halves)}.`;
    default:
      return `Which half of ${pair} is standby is not known: no line states a role. Export a log of the roles as well.`;
  }
}

/** How long before the sheet the lines end that name the standby. */
function sayAge({ standby: { ageSeconds } }: WorkSheet): string {
  return ageSeconds < 0
    ? `${sayDuration(-ageSeconds)} ahead of this computer's clock`
    : `${sayDuration(ageSeconds)} before this sheet was made`;
}

const daySeconds = 86_400;

function sayStale({ standby: { ageSeconds } }: WorkSheet): string {
  return ageSeconds > daySeconds ? ' That is older than a day: export the logs again before the work.' : '';
}

function sayRoles(halves: readonly SheetHalf[]): string {
  return halves
    .map(({ half, role }) => (role.value === null ? `half ${half} not known` : `half ${half} ${role.value}`))
    .join(', ');
}

/** Whether the pair is ready for a swap, as of its last line; the reasons follow it. */
export function sayFit({ readiness: { fit }, pair, asOf }: WorkSheet, zone: string): string {
  const at = `as of its last line, ${sayInstant(asOf.time, zone)}`;
  if (fit === null) return `Whether ${pair} is ready for a swap is not known, ${at}.`;
  return `${pair} is ${fit ? 'ready' : 'not ready'} for a swap ${at}.`;
}

/** A value of a half in words. */
function sayTold({ value, isConcluded }: Told): string {
  if (value === null) return 'not known';
  return isConcluded ? `${value} (concluded)` : value;
}

/** What a half is, as the cells of a table: role, light, model, serial and firmware; the first two only where lines are not too old. */
export function halfCells(
  { role, light, model, serial, firmware }: SheetHalf,
  { standby: { because } }: WorkSheet,
): readonly { readonly said: string; readonly evidence: Told['evidence'] }[] {
  const isOld = because === 'too-old' || because === 'ahead';
  return [role, light, model, serial, firmware].map((told, index) => ({
    said: isOld && index < 2 ? 'too old' : sayTold(told),
    evidence: told.evidence,
  }));
}

/** What a new module in a half must come to: its firmware, with where that is from, and the model where it is planned. */
export function sayWanted({ wanted: { firmware, from, model } }: SheetHalf): string {
  const release =
    firmware === null
      ? 'firmware not known: give it in the plan'
      : `firmware ${firmware}, ${from === 'plan' ? 'as planned' : 'that of the other half'}`;
  return model === null ? release : `model ${model}, as planned; ${release}`;
}

/** Steps whose time the bring-ups of others can tell. */
const timed: ReadonlySet<ProcedureStepId> = new Set(['in', 'identified', 'reflash', 'ready', 'steady']);

/** How long a step takes here, as the cells of a table: median, 95th percentile, n; empty where that is nothing to be told. */
export function expectedCells({ id, expected }: WorkStep): readonly [string, string, string] {
  if (expected === null) return timed.has(id) ? ['not known', '', ''] : ['', '', ''];
  const said = (seconds: number | null): string => (seconds === null ? 'not reached' : sayDuration(seconds));
  return [said(expected.median), said(expected.p95), String(expected.n)];
}

/** Shown once beside the first of them. */
export const howExpected =
  'Median and 95th percentile of the swaps in these files: reflash, readiness and light of the same model and firmware; insertion from the removal, identification up to the start of the reflash, of any. n: how many. Exposure: the sum of the medians from removal to ready.';

/** The exposure to expect of one half. */
export function sayExposure({ half, seconds, n, unknown }: ExpectedExposure): string {
  const of = half === null ? 'each half' : `half ${half}`;
  if (seconds !== null)
    return `Expect ${sayDuration(seconds)} without a ready partner for ${of} (sum of the medians, n = ${n}).`;
  return `How long ${of} leaves the pair without a ready partner is not known here: no time was logged of ${unknown.map((id) => stepWords[id]).join(', ')}.`;
}

const stepWords: Readonly<Record<ProcedureStepId, string>> = {
  baseline: 'the baseline',
  out: 'the removal',
  in: 'the insertion',
  identified: 'the identification',
  reflash: 'the reflash',
  synchronising: 'the synchronisation',
  ready: 'readiness',
  steady: 'the light',
  switchover: 'the switchover',
  'second-half': 'the second half',
  soak: 'the soak',
};

/** What is done in a step, as a row of a table has it. */
export function sayStep({ title }: WorkStep): string {
  return title.replace(/\.$/, '');
}

/** A limit as a table shows it: `5 min`. */
export function shortLimit(seconds: number | null): string {
  if (seconds === null) return '';
  return seconds < 3600 && seconds % 60 === 0 ? `${seconds / 60} min` : sayDuration(seconds);
}

export const holdPointWords: Readonly<Record<HoldPointId, string>> = {
  removal: 'before the removal',
  switchover: 'before the switchover',
  leaving: 'before leaving the cabinet',
};

/** What happened to the pair in the days before, in one sentence. */
export function sayLosses({ losses, troubleDays: { asked, covered } }: WorkSheet, zone: string): string {
  const days = covered >= asked - 0.05 ? `${asked} d` : `${asked} d (observed for ${sayDays(covered)})`;
  const [newest] = losses;
  if (newest === undefined) return `In the last ${days} no loss of its ready partner was logged.`;
  const last = sayInstant(newest.time, zone);
  return `In the last ${days} it lost its ready partner ${losses.length === 1 ? 'once' : sayCount(losses.length, 'time')}, ${losses.length === 1 ? 'at' : 'the last at'} ${last}.`;
}

function sayDays(days: number): string {
  return days < 2 ? sayDuration(days * daySeconds) : `${days.toFixed(1)} d`;
}

/** The five-minute rule. Common practice, no source. */
export const fiveMinuteRule =
  'Light not steady after five minutes: stop and call for support (common practice, no source).';

/** What a person at the cabinet does at each hold point. */
export const holdPointRule =
  'Hold point: stop, see for yourself that each condition holds, and only then initial it. Its state is that of the log and no permission.';
