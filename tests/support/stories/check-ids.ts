/** The checks of a swap. Source: design.md, section 5. */
export const checkIds = [
  'baseline-redundant',
  'removed-standby',
  'one-half-at-a-time',
  'identified-standby',
  'firmware-matched',
  'synchronised',
  'light-steady',
  'ready-before-switchover',
  'switchover-commanded',
  'never-without-active',
  'links-restored',
  'models-matched',
  'configuration-current',
  'not-flapping',
  'nothing-at-fault',
  'soaked',
] as const;

export type CheckId = (typeof checkIds)[number];
