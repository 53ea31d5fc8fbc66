/** Whether a check truly holds. */
export interface Verity {
  /** `null`: the rules do not decide it, as where a bring-up was cut short by other work. */
  readonly holds: boolean | null;
  /** What breaks it, where it does not hold. */
  readonly broken: Broken | null;
}

export interface Broken {
  /** The signals that show it, each by itself. */
  readonly signals: readonly string[];
  /** How long the state lasts that breaks it; `null` where it stays. */
  readonly seconds: number | null;
}

export const holding: Verity = { holds: true, broken: null };
export const undecided: Verity = { holds: null, broken: null };

/** It holds, unless it is broken in some signals. */
export function holdingIf(holds: boolean, signals: readonly string[], seconds: number | null = null): Verity {
  return holds ? holding : { holds: false, broken: { signals, seconds } };
}

/** All parts must hold: the first that is broken, else the first that is not decided. */
export function worstOf(parts: readonly Verity[]): Verity {
  return parts.find((p) => p.holds === false) ?? parts.find((p) => p.holds === null) ?? holding;
}
