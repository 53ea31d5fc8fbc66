import { verifyFiles } from '../verify-files.ts';
import type { Answerer } from './relation.ts';
import { relations } from './relations.ts';
import { relationsText } from './relations-text.ts';
import { runRelations } from './run-relations.ts';

/** The program itself. */
export const program: Answerer = ({ files, phrasebook }) => verifyFiles(files, phrasebook);

/** `npm run relations -- 2000 [FIRST]`: every relation over so many stories. */
export async function relationsCommand(count = '200', first = '0'): Promise<string> {
  const outcome = await runRelations(relations, { count: Number(count), first: Number(first) }, program);
  return relationsText(outcome);
}
