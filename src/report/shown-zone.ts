import type { Input } from '../vocabulary.ts';

/** The zone that instants are shown in: what the user says, else the first that a file's stamps name, else UTC. */
export function shownZone(said: string | null, inputs: readonly Pick<Input, 'zone'>[]): string {
  return said ?? inputs.find((i) => i.zone !== 'UTC')?.zone ?? 'UTC';
}
