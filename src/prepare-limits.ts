/** Every threshold of a work sheet, in milliseconds, with its source. */
export interface PrepareLimits {
  /** Lines older than this name no standby half unless that is asked for. Source: design.md, section 5, `prepare`: a day. */
  readonly freshMs: number;
  /**
   * Lines this far ahead of the computer's clock are taken for clocks that differ a little; farther, one of the clocks or the zone is
   * wrong, and no age can be told. Chosen here: a quarter of an hour.
   */
  readonly aheadMs: number;
  /** What happened to the pair in the last so long is told. Source: design.md, section 5, `prepare`: 30 d. */
  readonly troubleMs: number;
}

export const defaultPrepareLimits: PrepareLimits = {
  freshMs: 86_400_000,
  aheadMs: 900_000,
  troubleMs: 30 * 86_400_000,
};
