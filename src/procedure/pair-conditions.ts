import { linesOfAll } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { stateAt } from '../timeline/state-at.ts';
import type { Condition, HoldStatus } from '../vocabulary.ts';
import { cabinet, conditionOf, type HoldCase, linesFor, ofHalves, sayUnseen } from './hold-case.ts';
import type { StateNow } from './state-now.ts';

/** Both links of both halves are up, and none is known to be crossed. */
export function linksUp(hold: HoldCase): Condition {
  const states = (['link-a', 'link-b'] as const).flatMap((signal) =>
    ofHalves(hold, signal).map((state) => ({ ...state, signal })),
  );
  // Crossed when last read, and not read since, is no less crossed.
  const crossed = ofHalves(hold, 'links').filter((s) => s.step?.value === 'crossed');
  const evidence = linesFor(hold, [...states, ...crossed]);
  const say = (status: HoldStatus, statement: string): Condition =>
    conditionOf('links', null, status, statement, evidence);
  const named = (s: (typeof states)[number]): string => `${s.signal.replace('-', ' ')} of half ${s.half}`;
  const down = states.filter((s) => s.value === 'down');
  if (down.length > 0) return say('waiting', `Down: ${down.map(named).join(', ')}.`);
  if (crossed.length > 0)
    return say('waiting', `The links of half ${crossed.map((s) => s.half).join(' and ')} are crossed.`);
  const unknown = states.filter((s) => s.value === null);
  return unknown.length === 0
    ? say('met', 'Both links of both halves are up.')
    : say('waiting', `Not observed: ${unknown.map(named).join(', ')}; ${cabinet}.`);
}

/** What runs is what was last sent. */
export function configurationIsCurrent(hold: HoldCase): Condition {
  const state = stateAt(hold.facts.timeline, null, 'configuration', hold.at);
  const evidence = linesFor(hold, [state]);
  const say = (status: HoldStatus, statement: string): Condition =>
    conditionOf('configuration', null, status, statement, evidence);
  if (state.value === null) return say('waiting', sayUnseen('The configuration', state));
  return state.value === 'current'
    ? say('met', 'The configuration is current.')
    : say('waiting', 'A configuration is pending.');
}

const faultDayMs = 86_400_000;

/** Both supplies are good, and no fault of the last day is without a bring-up that settled after it. */
export function nothingAtFault(hold: HoldCase): Condition {
  const { facts, at } = hold;
  const states = ofHalves(hold, 'supply');
  const say = (status: HoldStatus, statement: string, lines: readonly StateNow[] = states): Condition =>
    conditionOf('fault', null, status, statement, linesFor(hold, lines));
  const bad = states.filter((s) => s.value === 'fault');
  if (bad.length > 0)
    return say('waiting', `The supply of half ${bad.map((s) => s.half).join(' and ')} is at fault.`, bad);
  const [fault, ...more] = facts.timeline.events.filter(
    (e) => e.signal === 'fault' && e.time <= at && e.time > at - faultDayMs && !isSettledAfter(facts, e, at),
  );
  if (fault !== undefined) {
    const of = fault.half === null ? '' : ` of half ${fault.half}`;
    const statement = `A fault${of} was logged, and no bring-up settled after it.`;
    return conditionOf('fault', fault.half, 'waiting', statement, linesOfAll([fault, ...more]));
  }
  const everLogged = facts.timeline.events.some((e) => e.signal === 'fault');
  const unknown = states.filter((s) => s.value === null);
  return unknown.length === 0
    ? say(
        'met',
        `Both supplies are good${everLogged ? ', and no fault is open' : '; no fault was ever logged'}.`,
      )
    : say(
        'waiting',
        `The supply of half ${unknown.map((s) => s.half).join(' and ')} was not observed; ${cabinet}.`,
      );
}

function isSettledAfter(
  { bringUps }: PairFacts,
  fault: { readonly half: string | null; readonly time: number },
  at: number,
): boolean {
  return bringUps.some(
    ({ half, settled }) =>
      settled !== null &&
      (fault.half === null || half === fault.half) &&
      settled.earliest >= fault.time &&
      settled.time <= at,
  );
}

/** Model and firmware of both halves are known. */
export function identitiesKnown(hold: HoldCase): Condition {
  const states = (['model', 'firmware'] as const).flatMap((signal) =>
    ofHalves(hold, signal).map((state) => ({ ...state, signal })),
  );
  const evidence = linesFor(hold, states);
  const unknown = states.filter((s) => s.value === null);
  if (unknown.length > 0) {
    const said = unknown.map((s) => `${s.signal} of half ${s.half}`).join(', ');
    return conditionOf('identity', null, 'waiting', `Not observed: ${said}; ${cabinet}.`, evidence);
  }
  return conditionOf('identity', null, 'met', 'Model and firmware of both halves are known.', evidence);
}

/** Both halves report the same firmware, the planned one where a plan was given. */
export function firmwareIsSame(hold: HoldCase): Condition {
  const states = ofHalves(hold, 'firmware');
  const evidence = linesFor(hold, states);
  const say = (status: HoldStatus, statement: string): Condition =>
    conditionOf('reflash', hold.half, status, statement, evidence);
  const unknown = states.find((s) => s.value === null);
  if (unknown !== undefined)
    return say('waiting', sayUnseen(`The firmware of half ${unknown.half}`, unknown));
  const planned = hold.half === null ? undefined : hold.plan[hold.half]?.firmware;
  const own = states.find((s) => s.half === hold.half);
  if (planned !== undefined && own?.value !== planned)
    return say('waiting', `Half ${hold.half} runs firmware ${own?.value}; ${planned} is planned.`);
  return new Set(states.map((s) => s.value)).size === 1
    ? say('met', `Both halves run firmware ${states[0]?.value}.`)
    : say('waiting', `The firmware differs: ${states.map((s) => `half ${s.half} ${s.value}`).join(', ')}.`);
}
