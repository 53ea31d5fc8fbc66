import { markdown } from './escape.ts';
import { notKnownOf, sayNotKnown } from './not-known.ts';

/** What the verdict below cannot know, a paragraph for each kind; empty where all was recognised. */
export function notKnownBlocks(of: Parameters<typeof notKnownOf>[0]): readonly string[] {
  return sayNotKnown(notKnownOf(of)).map((said) => `Not known: ${markdown(said)}`);
}
