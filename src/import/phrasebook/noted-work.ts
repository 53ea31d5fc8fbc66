import type { Signal } from '../../vocabulary.ts';
import { isOfAnotherTime } from './doubts.ts';

// Words of people at work, common practice, no source.

/** It was corrected on the spot, or asked. */
const corrected = /\?|\b(?:sorry|wrong|correction|mistake|no wait|i mean)\b/i;
const worked = /\b(?:pulled|took out|removed|withdrew|put in|fitted|inserted|seated)\b/i;
/** What ends the words for the thing that was worked on. */
const placed =
  /\b(?:from|out|of|in|into|at|on|to|with|for|because|due|again|back|and|then|but|by|after|before|while|as|ok)\b|[,;.:()]|\s[-–]\s/i;
/** "pulled B and A": which of them is meant cannot be said. */
const two = /^[^,;.]*\band\s+(?:(?:slot|half|module|the)\s+)*[A-Z]\s*(?:$|[,;.])/;
/** Words for a module, and those beside them: a fuse, a cover and a cable are none. */
const ofModule = new RegExp(
  `^(?:${[
    'the a an old new its his her their our my another other same first second this that one it',
    'failed faulty bad dead broken spare replacement good',
    'standby stby sby active primary secondary redundant controllers? processors? modules? half slot place unit side node position',
    'serial number no model type rev revision firmware fw is was has been have now just got in of',
  ]
    .join(' ')
    .replaceAll(' ', '|')}|[a-z]|\\S*\\d\\S*)$`,
  'i',
);

/** Whether a technician's words, in which a built-in rule finds a happening, may tell of something else or of another time. */
export function isDoubtfulNote(signal: Signal, text: string): boolean {
  if (corrected.test(text) || isOfAnotherTime(text)) return true;
  return (signal === 'removed' || signal === 'inserted') && !isOfModule(text);
}

/** What was worked on is named behind the verb or, where nothing is, before it. */
function isOfModule(text: string): boolean {
  const found = worked.exec(text);
  if (found === null) return true;
  const behind = text.slice(found.index + found[0].length);
  if (two.test(behind) || /^\W*\w*\s*from service\b/i.test(behind)) return false;
  const [object = ''] = behind.split(placed);
  const [subject = ''] = text
    .slice(0, found.index)
    .split(/[,;.:()]/)
    .slice(-1);
  return wordsOf(wordsOf(object).length > 0 ? object : subject).every((word) => ofModule.test(word));
}

function wordsOf(words: string): readonly string[] {
  return words.split(/[\s"']+/).filter((word) => word !== '');
}
