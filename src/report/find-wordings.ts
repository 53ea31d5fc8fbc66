import type { SeenWording, Survey } from '../vocabulary.ts';
import { ruleFor } from './draft-rules.ts';
import { terminal } from './escape.ts';
import { wrap } from './verify-text.ts';
import { sayCount } from './words.ts';

/** The wordings that hold all of the words, in any order and case. An empty text gives all. */
export function findWordings({ wordings }: Survey, words: string): readonly SeenWording[] {
  const wanted = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  return wordings.filter((w) => {
    const text = listed(w).toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}

/** What a wording is listed as. */
export function listed({ kind, name, value }: SeenWording): string {
  if (kind === 'message') return name;
  return kind === 'value' ? `${name} = ${value}` : `${kind} ${name}`;
}

/** The rule to copy for a wording, as a part of a phrasebook. */
function ruleText(wording: SeenWording, survey: Survey): string {
  const values =
    wording.kind === 'parameter'
      ? survey.wordings.filter((w) => w.kind === 'value' && w.name === wording.name)
      : [];
  const { part, yaml } = ruleFor(wording, values);
  return `${part}:\n  ${yaml}\n`;
}

/** What was found, for a person; a line of its own where nothing was. */
export function foundText(survey: Survey, words: string): string {
  const found = findWordings(survey, words);
  const all = sayCount(survey.wordings.length, 'wording');
  if (found.length === 0)
    return `No match for "${terminal(words)}" in ${all} of ${sayCount(survey.files.length, 'file')}.\n`;
  return `${found.flatMap((wording) => wordingText(wording, survey)).join('\n')}\n${found.length} of ${all} match.\n`;
}

function wordingText(wording: SeenWording, survey: Survey): readonly string[] {
  const { count, first } = wording;
  const times = count === 1 ? 'once' : `${count} times`;
  return [
    ...wrap(`"${terminal(listed(wording))}"`, '', '  '),
    ...wrap(
      `${times}, first in ${terminal(first.file)}, line ${first.line}: ${terminal(first.text)}`,
      '  ',
      '    ',
    ),
    ...wrap(`${sayUnderstood(wording)}.`, '  ', '    '),
    ...ruleText(wording, survey)
      .trimEnd()
      .split('\n')
      .map((line) => `    ${line}`),
    '',
  ];
}

/** `partner-ready: no, by the built-in words`. */
export function sayUnderstood({ kind, understood }: SeenWording): string {
  if (understood === null) return kind === 'message' ? 'Not recognised' : `No rule knows this ${kind}`;
  const { by, signal, value } = understood;
  const meaning = [signal, value].filter((text) => text !== null).join(': ');
  return meaning === '' ? `Ignored, by ${by}` : `Read as ${terminal(meaning)}, by ${by}`;
}

/** What was found, as `found` of the JSON document. */
export function foundDocument(survey: Survey, words: string): unknown {
  return findWordings(survey, words).map((wording) => ({
    kind: wording.kind,
    wording: listed(wording),
    count: wording.count,
    first: wording.first,
    understood: wording.understood,
    rule: ruleText(wording, survey),
  }));
}
