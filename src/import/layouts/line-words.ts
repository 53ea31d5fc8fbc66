import type { FileRule } from '../phrasebook/phrasebook-rules.ts';
import { qualityReader } from './quality.ts';

/** What fields of a line say of the rest of it, where the rule for the file names them. */
export interface LineWords {
  /** The state of the condition that a message names; undefined where none is said. */
  state(fields: ReadonlyMap<string, string>): string | undefined;
  /** The quality, where it says that the values of the line were not observed; `null` where they were. */
  badQuality(fields: ReadonlyMap<string, string>): string | null;
  /** The names of these fields: they are no parameters. */
  readonly names: ReadonlySet<string>;
}

export function lineWords(rule: FileRule | undefined): LineWords {
  const nameOf = (key: 'state' | 'quality'): string | undefined =>
    rule?.columns[key] ?? (rule?.line?.groups.includes(key) === true ? key : undefined);
  const [state, quality] = [nameOf('state'), nameOf('quality')];
  const isGood = qualityReader(rule?.good);
  return {
    state: (fields) => (state === undefined ? undefined : (fields.get(state) ?? '')),
    badQuality(fields) {
      if (quality === undefined) return null;
      const text = fields.get(quality) ?? '';
      return isGood(text) ? null : text;
    },
    names: new Set([state, quality].filter((name) => name !== undefined)),
  };
}
