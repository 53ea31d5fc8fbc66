import { endLines, linesOf, uniqueLines } from '../timeline/evidence.ts';
import { stretchesOf } from '../timeline/holding.ts';
import { stateAt } from '../timeline/state-at.ts';
import { type Condition, type HoldStatus, sayDuration } from '../vocabulary.ts';
import { cabinet, conditionOf, type HoldCase, linesFor, ofHalves, sayUnseen } from './hold-case.ts';
import { type StateNow, stateNow } from './state-now.ts';

/** Both roles are stated, and the half that is meant is standby. */
export function rolesKnown(hold: HoldCase): Condition {
  const { half } = hold;
  const states = ofHalves(hold, 'role');
  const evidence = linesFor(hold, states);
  const say = (status: HoldStatus, statement: string): Condition =>
    conditionOf('roles', half, status, statement, evidence);
  const unclear = unclearRole(states);
  if (unclear !== null) return say('waiting', unclear);
  const standby = states.find((s) => s.value === 'standby');
  const active = states.find((s) => s.value === 'active');
  if (standby === undefined || active === undefined)
    return say(
      'waiting',
      `${states.map((s, index) => `${index === 0 ? 'Half' : 'half'} ${s.half} is ${s.value === 'none' ? 'out' : s.value}`).join(', ')}.`,
    );
  if (standby.half !== half && half !== null)
    return say('waiting', `Half ${half} is active; half ${standby.half} is standby.`);
  return say('met', `Half ${active.half} is active and half ${standby.half} is standby.`);
}

function unclearRole(states: readonly StateNow[]): string | null {
  const unknown = states.find((s) => s.value === null);
  if (unknown !== undefined) return sayUnseen(`The role of half ${unknown.half}`, unknown);
  const concluded = states.find((s) => s.step?.concluded === true);
  return concluded === undefined
    ? null
    : `The role of half ${concluded.half} is concluded from that of the other half, no line states it; ${cabinet}.`;
}

/** Both halves active, or neither, for longer than roles take to be exchanged: `null` where it is not so. */
export function rolesInConflict({ facts, at, rules }: HoldCase): Condition | null {
  const conflict = facts.conflicts.findLast((c) => c.goesOn && c.from <= at);
  if (conflict === undefined || conflict.low <= rules.conflictSeconds) return null;
  const words = conflict.kind === 'two-active' ? 'Both halves are active' : 'Neither half is active';
  const statement = `${words}, for at least ${sayDuration(conflict.low)}.`;
  return conditionOf('roles', null, 'stop', statement, conflict.evidence);
}

/** A ready partner without a break for so long, up to now; since the last removal, where a half is in work. */
export function readyFor(hold: HoldCase, seconds: number): Condition {
  const { facts, at, works } = hold;
  const { timeline } = facts;
  const state = stateAt(timeline, null, 'partner-ready', at);
  const evidence = linesFor(hold, [state]);
  const say = (status: HoldStatus, statement: string): Condition =>
    conditionOf('ready', null, status, statement, evidence);
  if (state.value === null) return say('waiting', sayUnseen('Whether the partner is ready', state));
  if (state.value === 'no') return say('waiting', 'The partner is not ready.');
  const since = works.at(-1)?.change.removed.time ?? Number.NEGATIVE_INFINITY;
  const stretch = stretchesOf(timeline, null, 'partner-ready', 'yes').findLast(
    (s) => s.isSeen && s.start.time <= at,
  );
  if (stretch === undefined || stretch.start.time < since)
    return say('waiting', `Whether the partner is ready again was not observed; ${cabinet}.`);
  const { start, sureUntil } = stretch;
  const held = Math.max(0, Math.min(sureUntil, at) - start.time - start.resolution) / 1000;
  const needed = sayDuration(seconds);
  return held >= seconds
    ? conditionOf(
        'ready',
        null,
        'met',
        `The partner is ready without a break for ${needed} at least.`,
        uniqueLines([...stretch.evidence, ...endLines(timeline).slice(-1)]),
      )
    : say(
        'waiting',
        `The partner has been ready for ${sayDuration(held)}; ${needed} without a break is needed.`,
      );
}

/** The ready partner that had come up since the removal is lost, and no work explains it; `null` where it is not so. */
export function partnerLost({ facts, at, works, rules }: HoldCase): Condition | null {
  const last = works.at(-1);
  const { steps } = facts.readiness;
  const loss = facts.losses.findLast((l) => l.event.time <= at);
  if (last === undefined || loss === undefined || loss.kind === 'planned') return null;
  const isNow = loss.event === steps.findLast((s) => s.time <= at);
  const { time } = last.change.removed;
  const wasUp = steps.some((s) => s.value === 'yes' && s.time > time && s.time < loss.event.time);
  // What the log ends with may belong to work that is logged next.
  if (!isNow || !wasUp || at - loss.event.time <= rules.belongsMs) return null;
  return conditionOf('ready', null, 'stop', 'The partner was lost.', linesOf(loss.event));
}

/** The light of a half is steady; of a new module, since it is in. */
export function lightIsSteady(hold: HoldCase): Condition {
  const { facts, at, half } = hold;
  if (half === null) return unnamed(hold, 'steady', 'The light of the standby');
  const state = stateNow(facts.timeline, half, 'light', at);
  const evidence = linesFor(hold, [state]);
  const known = state.step !== undefined && isOfModule(hold, half, state) ? state.value : null;
  if (known === null) {
    const statement = sayUnseen(`The light of half ${half}`, state);
    return conditionOf('steady', half, 'waiting', statement, evidence);
  }
  return known === 'steady'
    ? conditionOf('steady', half, 'met', `The light of half ${half} is steady.`, evidence)
    : conditionOf('steady', half, 'waiting', `The light of half ${half} is ${known}.`, evidence);
}

/** What was said before the module in this place came tells nothing of it. */
function isOfModule({ works }: HoldCase, half: string, { step }: StateNow): boolean {
  const work = works.findLast((w) => w.change.half === half);
  return work === undefined || (step !== undefined && step.time >= work.change.removed.time);
}

function unnamed(hold: HoldCase, id: string, what: string): Condition {
  return conditionOf(
    id,
    null,
    'waiting',
    `${what} was not observed; ${cabinet}.`,
    endLines(hold.facts.timeline),
  );
}
