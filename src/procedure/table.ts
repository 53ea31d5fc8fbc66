import type { HoldPointId, ProcedureStepId } from '../vocabulary.ts';

/** A step of a swap: what is done, within what time, and at which hold point a person stops before it. */
export interface TableStep {
  readonly id: ProcedureStepId;
  /** An imperative; `{half}` stands for the half that it is about. */
  readonly title: string;
  /** Where all is well it does not take longer; of `baseline` and `soak` the time that must pass. `null`: no limit. */
  readonly limitSeconds: number | null;
  /** The hold point before it; of `soak` the one after it. */
  readonly holdPoint: HoldPointId | null;
  /** Of the pair: it comes once; of a half: once for each. */
  readonly of: 'pair' | 'half';
}

const minute = 60;

/**
 * The limits of the steps that have one, in seconds; of `baseline` and `soak` the time that must pass. Source: design.md, section 5;
 * five minutes for the light are common practice, no source.
 */
export const limitSeconds = {
  baseline: 15 * minute,
  in: 15 * minute,
  identified: 15 * minute,
  reflash: 15 * minute,
  ready: 15 * minute,
  steady: 5 * minute,
  'second-half': 24 * 60 * minute,
  soak: 30 * minute,
} as const satisfies Partial<Record<ProcedureStepId, number>>;

/** The steps of a swap in their order; from `out` to `switchover` the second half goes the same way. */
export const table = [
  {
    id: 'baseline',
    title: 'Watch the pair: a ready partner without a break for 15 minutes.',
    limitSeconds: limitSeconds.baseline,
    holdPoint: null,
    of: 'pair',
  },
  {
    id: 'out',
    title: 'Remove the module from half {half}, the standby.',
    limitSeconds: null,
    holdPoint: 'removal',
    of: 'half',
  },
  {
    id: 'in',
    title: 'Insert the new module in half {half}.',
    limitSeconds: limitSeconds.in,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'identified',
    title: 'Wait until the new module in half {half} reports its model, serial and firmware.',
    limitSeconds: limitSeconds.identified,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'reflash',
    title: 'Bring half {half} to the right firmware, if it differs.',
    limitSeconds: limitSeconds.reflash,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'synchronising',
    title: 'Wait while half {half} synchronises.',
    limitSeconds: null,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'ready',
    title: 'Wait until half {half} is the ready partner.',
    limitSeconds: limitSeconds.ready,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'steady',
    title: 'Wait until the light of half {half} is steady; not steady after 5 minutes: stop.',
    limitSeconds: limitSeconds.steady,
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'switchover',
    title: 'Switch over to half {half}.',
    limitSeconds: null,
    holdPoint: 'switchover',
    of: 'half',
  },
  {
    id: 'second-half',
    title: 'Do the same work on half {half}.',
    limitSeconds: limitSeconds['second-half'],
    holdPoint: null,
    of: 'half',
  },
  {
    id: 'soak',
    title: 'Watch the pair: a ready partner without a break for 30 minutes.',
    limitSeconds: limitSeconds.soak,
    holdPoint: 'leaving',
    of: 'pair',
  },
] as const satisfies readonly TableStep[];

/** What a hold point asks, in the words of a sheet; `{half}` stands for the half that would be removed, or take over. */
export interface Asked {
  readonly id: string;
  readonly asks: string;
  /** Asked only before the removal of the second half. */
  readonly isOfSecond?: true;
}

/** The conditions of each hold point, in the order in which they are looked at. */
export const holdPoints = {
  removal: [
    { id: 'roles', asks: 'Half {half} is standby and the other half active; lines state both.' },
    { id: 'ready', asks: 'The partner is ready without a break for 15 minutes.' },
    { id: 'steady', asks: 'The light of half {half} is steady.' },
    { id: 'links', asks: 'Both links of both halves are up.' },
    { id: 'configuration', asks: 'The configuration is current.' },
    { id: 'fault', asks: 'Both supplies are good, and no fault is open.' },
    { id: 'identity', asks: 'Model and firmware of both halves are known.' },
    { id: 'first-settled', asks: 'The half that was replaced first has settled.', isOfSecond: true },
  ],
  switchover: [
    { id: 'in', asks: 'A module is in half {half}.' },
    { id: 'identified', asks: 'The new module in half {half} reports its identity.' },
    { id: 'roles', asks: 'Half {half} is standby and the other half active; lines state both.' },
    { id: 'reflash', asks: 'Both halves run the same firmware, the planned one where a plan was given.' },
    { id: 'ready', asks: 'The partner is ready, and was for the hold time.' },
    { id: 'steady', asks: 'The light of half {half} is steady.' },
    { id: 'links', asks: 'Both links of both halves are up.' },
    { id: 'fault', asks: 'Both supplies are good, and no fault is open.' },
  ],
  leaving: [
    { id: 'soaked', asks: 'The partner is ready without a break for 30 minutes.' },
    {
      id: 'firmware-matched',
      asks: 'Both halves run the same firmware, the planned one where a plan was given.',
    },
    { id: 'models-matched', asks: 'Both halves are the same model, the planned one where a plan was given.' },
    { id: 'links-restored', asks: 'Both links of both halves are up, and not crossed.' },
    { id: 'configuration-current', asks: 'The configuration is current.' },
    {
      id: 'nothing-at-fault',
      asks: 'Supplies are good, the light of the standby is steady, and no fault is open.',
    },
    { id: 'verdict', asks: 'Every check of the swap passes.' },
  ],
} as const satisfies Readonly<Record<HoldPointId, readonly Asked[]>>;

/** A text of the table with its half. */
export function withHalf(text: string, half: string | null): string {
  return text.replaceAll('{half}', half ?? '(not known)');
}
