import { type Staff, type StateSpan, sayLimit } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { nameState } from './staff-state-words.ts';
import { sayInstant } from './words.ts';

/** What the staff says of one instant. */
export interface ReadOut {
  readonly time: string;
  /** `A: active, firmware 6.4.1`, one for each half. */
  readonly halves: readonly string[];
  /** Of the pair: whether and since when the partner was ready, and what was not as it should be. */
  readonly pair: readonly string[];
}

const roles: Readonly<Record<Staff['stretches'][number]['drawn'], string>> = {
  active: 'active',
  ready: 'standby, ready',
  'not-ready': 'standby, not ready',
  absent: 'nothing in that place',
  unknown: 'role not known',
};

/** Both halves and the pair at an instant of a whole staff; `spans` are what the halves reported of links and firmware. */
export function readOut(staff: Staff, spans: readonly StateSpan[], time: number, zone: string): ReadOut {
  const isAt = ({ from, to }: { readonly from: number; readonly to: number }): boolean =>
    from <= time && (to > time || (to === time && to === staff.to));
  return {
    time: sayInstant(time, zone),
    halves: staff.halves.map((half) => {
      const own = <T extends { readonly half: string }>(things: readonly T[]): readonly T[] =>
        things.filter((thing) => thing.half === half);
      const drawn = own(staff.stretches).find(isAt)?.drawn;
      const light = own(staff.lights).find(isAt)?.light;
      const words = [
        drawn === undefined ? 'unobserved' : roles[drawn],
        ...(light === undefined ? [] : [`light ${light}`]),
        ...own(spans).filter(isAt).flatMap(sayReported),
      ];
      return `${terminal(half)}: ${words.join(', ')}`;
    }),
    pair: [sayPartner(staff, time, zone), ...sayStates(staff, isAt)].filter((words) => words !== ''),
  };
}

/** Links are told of where they are not as they should be. */
function sayReported({ signal, value }: StateSpan): readonly string[] {
  if (signal === 'firmware') return [`firmware ${terminal(value)}`];
  if (signal === 'links') return value === 'crossed' ? ['links crossed'] : [];
  return value === 'down' ? [`${signal.replace('-', ' ')} down`] : [];
}

/** Since when the partner is ready or not, up to the time; empty where it is not known. */
function sayPartner({ stretches, states, from }: Staff, time: number, zone: string): string {
  const without = states.filter((s) => s.kind === 'no-ready-partner' && s.from <= time);
  const now = without.find((s) => s.to > time || (s.goesOn && s.to === time));
  if (now !== undefined)
    return `no ready partner since ${now.from <= from ? 'the log began' : sayInstant(now.from, zone)}`;
  if (!stretches.some((s) => s.drawn === 'ready' && s.from <= time && s.to >= time)) return '';
  const unseen = states.filter((s) => s.kind === 'unobserved' && s.to <= time);
  const since = [...without, ...unseen].reduce((last, s) => Math.max(last, s.to), from);
  const isSeen = !unseen.some((s) => s.to === since);
  const words = since <= from ? 'the log began' : sayInstant(since, zone);
  return `partner ready ${isSeen ? 'since' : 'at least since'} ${words}`;
}

function sayStates(
  { states, limitSeconds }: Staff,
  isAt: (span: Staff['states'][number]) => boolean,
): readonly string[] {
  return states
    .filter((s) => s.kind !== 'no-ready-partner' && s.kind !== 'unobserved' && isAt(s))
    .map((s) =>
      s.kind === 'past-limit'
        ? `bring-up${s.half === null ? '' : ` of ${terminal(s.half)}`} past ${sayLimit(limitSeconds)}`
        : nameState(s.kind, limitSeconds),
    );
}

/** The read-out as one text. */
export function sayReadOut({ time, halves, pair }: ReadOut): string {
  return `${[time, ...halves, ...pair].join('; ')}.`;
}
