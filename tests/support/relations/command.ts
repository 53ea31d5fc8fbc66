import { verifyFiles } from '../verify-files.ts';
import type { Answerer } from './relation.ts';
import { relations } from './relations.ts';
import { relationsText } from './relations-text.ts';
import { casesOf, runRelations } from './run-relations.ts';

/** The program itself. */
export const program: Answerer = ({ files, phrasebook }) => verifyFiles(files, phrasebook);

/** `npm run relations -- 2000 [FIRST] [CHANGES] [ONLY]`: every relation, or the one named, over so many stories, so many changes of each. */
export async function relationsCommand(
  count = '200',
  first = '0',
  changes = '1',
  only?: string,
): Promise<string> {
  const cases = casesOf(Number(count), Number(first));
  const asked = relations.filter(({ id }) => only === undefined || id === only);
  const outcome = await runRelations(asked, cases, program, Number(changes));
  return relationsText(outcome);
}
