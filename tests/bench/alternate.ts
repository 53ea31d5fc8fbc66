import { type Taken, timed } from './programs.ts';

/** Rounds of each program; the best counts, since everything else on the machine only takes away. */
export const rounds = 3;

/** A command to run, and the statuses with which it may end; 0 unless said. */
export interface Contender {
  readonly command: readonly string[];
  readonly statuses?: readonly number[];
}

/** Runs commands in turn, round after round, so that what else the machine does hits all alike; gives the best of each. */
export function alternate(contenders: readonly Contender[]): readonly Taken[] {
  const runs = Array.from({ length: rounds }, () =>
    contenders.map(({ command, statuses }) => timed(command, statuses)),
  );
  return contenders.map((_, place) =>
    runs
      .flatMap((round) => round[place] ?? [])
      .reduce((best, run) => (run.seconds < best.seconds ? run : best)),
  );
}
