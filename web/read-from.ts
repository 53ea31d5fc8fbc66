import type { YamlText } from './given-files.ts';
import type { GivenStore, OpenedFile } from './given-store.ts';
import type { NamedText, Question, ReadingNews } from './protocol.ts';

/** Told of what is read; it may throw to end the reading. */
export type Tell = (news: ReadingNews) => void;

/** What a person asks to be read. */
export type ReadAsk = Extract<Question, { readonly kind: 'read' }>;

/** What a reading was made of. */
export interface ReadFrom {
  readonly question: ReadAsk;
  readonly store: GivenStore;
  readonly texts: readonly YamlText[];
  readonly opened: readonly OpenedFile[];
  readonly phrasebook: NamedText | null;
}
