import type { HandTimes } from './timeline/hand-times.ts';
import type {
  Condition,
  ExpectedExposure,
  HoldPoint,
  NonEmpty,
  ProcedureStepId,
  SourceLine,
  WorkStep,
} from './vocabulary.ts';

/** The steps with the times of the work of hands, which no bring-up tells. */
export function withHandTimes(steps: readonly WorkStep[], hands: HandTimes): readonly WorkStep[] {
  return steps.map((step) => {
    if (step.expected !== null || (step.id !== 'in' && step.id !== 'identified')) return step;
    return { ...step, expected: hands[step.id] };
  });
}

/** The steps during which a half leaves the pair without a ready partner; `ready` counts from the end of the reflash. */
const withoutPartner: ReadonlySet<ProcedureStepId> = new Set(['in', 'identified', 'reflash', 'ready']);

/** The exposure to expect of each half in work, in the order of the work. */
export function exposureOf(steps: readonly WorkStep[]): readonly ExpectedExposure[] {
  const counted = steps.filter((s) => withoutPartner.has(s.id));
  return [...new Set(counted.map((s) => s.half))].map((half) => {
    // Of halves that are not known each has its steps: those of the first are enough.
    const all = counted.filter((s) => s.half === half);
    const own = all.filter((s, index) => all.findIndex((other) => other.id === s.id) === index);
    const unknown = own.filter((s) => s.expected === null || s.expected.median === null).map((s) => s.id);
    const sum = own.reduce((seconds, s) => seconds + (s.expected?.median ?? 0), 0);
    return {
      half,
      seconds: unknown.length === 0 ? sum : null,
      n: Math.min(...own.map((s) => s.expected?.n ?? 0)),
      unknown,
    };
  });
}

/** Where a person writes the half that is standby. */
const blank = '____';

/** A step with a blank in the place of a half that no line names. */
export function withBlank(step: WorkStep): WorkStep {
  const filled = (text: string): string => text.replaceAll('(not known)', blank);
  return { ...step, title: filled(step.title), holdPoint: eachText(step.holdPoint, filled) };
}

/**
 * A step that names no half, for lines that are too old to say which is standby: with blanks, and what they say of roles waits;
 * `evidence` is what shows how old they are.
 */
export function unnamed(step: WorkStep, evidence: NonEmpty<SourceLine>): WorkStep {
  const { half, title, holdPoint } = step;
  if (half === null && holdPoint === null) return step;
  const filled = (text: string): string => (half === null ? text : withoutHalf(text, half));
  const point = eachText(holdPoint, filled);
  if (point === null) return { ...step, half: null, title: filled(title) };
  const [first, ...rest] = point.conditions;
  const conditions: NonEmpty<Condition> = [unseen(first, evidence), ...rest.map((c) => unseen(c, evidence))];
  const isStopped = conditions.some((c) => c.status === 'stop');
  const status = isStopped ? 'stop' : 'waiting';
  return {
    ...step,
    half: null,
    title: filled(title),
    holdPoint: { ...point, half: null, status, conditions },
  };
}

const ofRoles: ReadonlyMap<string, string> = new Map([
  ['roles', `Half ${blank} is standby and the other half active.`],
  ['steady', `The light of half ${blank} is steady.`],
]);

function unseen(condition: Condition, evidence: NonEmpty<SourceLine>): Condition {
  const asked = condition.status === 'stop' ? undefined : ofRoles.get(condition.id);
  if (asked === undefined) return { ...condition, half: null };
  return { ...condition, half: null, status: 'waiting', statement: asked, evidence };
}

function eachText(holdPoint: HoldPoint | null, change: (text: string) => string): HoldPoint | null {
  if (holdPoint === null) return null;
  const [first, ...rest] = holdPoint.conditions;
  const changed = (c: Condition): Condition => ({ ...c, statement: change(c.statement) });
  const conditions: NonEmpty<Condition> = [changed(first), ...rest.map(changed)];
  return { ...holdPoint, statement: change(holdPoint.statement), conditions };
}

function withoutHalf(text: string, half: string): string {
  const name = half.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&');
  return text.replace(new RegExp(`([Hh])alf ${name}(?![\\w-])`, 'g'), `$1alf ${blank}`);
}
