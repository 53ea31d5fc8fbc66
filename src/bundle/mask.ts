import type { FileSource } from '../pipeline.ts';
import type { Answer, BundleCase } from './case.ts';

/** Stand-ins for the names of a case, the same everywhere. */
export interface Mask {
  text(text: string): string;
  /** A phrasebook, whose patterns of units may hold parts of names. */
  phrasebook(text: string): string;
  log(source: FileSource): FileSource;
  /** A name that is left in a text; `null`: none. */
  leftIn(text: string): string | null;
  /** Looks for names that are left, in any encoding. `isOurs`: its numbers are not those of a log. */
  search(isOurs: boolean): { push(bytes: Uint8Array): void; end(): string | null };
  /** Originals and stand-ins as JSON. */
  readonly key: string;
}

export async function maskOf(_one: BundleCase, _answer: Answer, place: string): Promise<Mask> {
  throw new Error(place);
}
