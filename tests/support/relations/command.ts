import { verifyFiles } from '../verify-files.ts';
import type { Answerer } from './relation.ts';
import { relations } from './relations.ts';
import { relationsText } from './relations-text.ts';
import { casesOf, runRelations } from './run-relations.ts';

/** The program itself. */
export const program: Answerer = ({ files, phrasebook }) => verifyFiles(files, phrasebook);

/** `npm run relations -- 2000 [FIRST] [CHANGES]`: every relation over so many stories, so many changes of each. */
export async function relationsCommand(count = '200', first = '0', changes = '1'): Promise<string> {
  const cases = casesOf(Number(count), Number(first));
  const outcome = await runRelations(relations, cases, program, Number(changes));
  return relationsText(outcome);
}
