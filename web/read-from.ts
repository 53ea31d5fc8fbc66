import type { SaidByBundles } from '../src/bundle/inside.ts';
import type { YamlText } from './given-files.ts';
import type { GivenStore, OpenedFile } from './given-store.ts';
import type { NamedText, Question, ReadingNews } from './protocol.ts';

/** Told of what is read; it may throw to end the reading. */
export type Tell = (news: ReadingNews) => void;

/** What the page asks a reading for. */
export type ReadAsk = Extract<Question, { readonly kind: 'read' }>;

/** What a reading was made of. */
export interface ReadFrom {
  readonly question: ReadAsk;
  readonly store: GivenStore;
  /** The YAML files, and the phrasebooks of sessions. */
  readonly texts: readonly YamlText[];
  readonly opened: readonly OpenedFile[];
  /** What the bundles among the files say. */
  readonly said: SaidByBundles;
  /** The one in use. */
  readonly phrasebook: NamedText | null;
}
