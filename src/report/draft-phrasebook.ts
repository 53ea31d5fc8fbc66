import {
  type DraftKey,
  type FileDraft,
  gauges,
  happenings,
  type SeenWording,
  type Survey,
  stateSignals,
  stateValues,
  type UnitDraft,
} from '../vocabulary.ts';
import { type DraftRule, printable, quoted, ruleFor } from './draft-rules.ts';

const mostRules = 200;
const longestExample = 160;

/**
 * A phrasebook (YAML 1.2) to start from: how each file is read or may be, and a rule for every wording, those of redundancy
 * first, then the most frequent. It can be read as it is. A rule is on where the built-in words are sure of it; any other
 * counts once its `#` is gone and its blanks, `___`, are filled in. Log text stands in it as quoted text and comments only.
 */
export function draftPhrasebook({ files, units, wordings }: Survey): string {
  const of = (kind: SeenWording['kind']): readonly SeenWording[] => wordings.filter((w) => w.kind === kind);
  const unknownUnits = of('unit').filter((w) => w.understood === null);
  const isDrafted = units.some((u) => u.isOn);
  return `${[
    '# A draft by steadypair inspect; guesses are marked. Remove the # before a rule and put a word for each ___;',
    '# leave out values where the text itself is meant, as for firmware. What stays commented out is not used.',
    'name: my site',
    ...timeLines(files),
    '',
    'files:',
    ...files.flatMap((file) => fileLines(file, files)),
    '',
    'units:    # a unit is a pair, a half of a pair or a role in it',
    ...units.map(unitLine),
    ...(isDrafted ? [] : unknownUnits.slice(0, mostRules).map((w) => ruleLine(ruleFor(w), w))),
    '',
    'parameters:',
    ...parameterLines(wordings),
    '',
    'messages:    # the first that fits is used; a happening such as removed needs no value',
    ...signalLines(),
    ...messageLines(of('message')),
    '',
    'ignore:    # what means nothing here',
    ...of('message')
      .filter((w) => w.understood?.signal === null || (w.understood === null && !w.isOfRedundancy))
      .slice(0, mostRules)
      .map(({ pattern, understood }) => `${understood === null ? '#' : ''}  - ${quoted(pattern)}`),
  ].join('\n')}\n`;
}

function unitLine({ pattern, pair, because, isOn }: UnitDraft): string {
  const fixed = pair === null ? '' : `, pair: ${quoted(pair)}`;
  const why = printable(isOn ? `a guess: ${because}` : because);
  return `${isOn ? '' : '#'}  - { pattern: ${quoted(pattern)}${fixed} }    # ${why}`;
}

/** What stamps need that all files agree on; the rest stands with its file. */
function timeLines(files: readonly FileDraft[]): readonly string[] {
  const isOpen = files.some((f) => f.isZoneOpen);
  const zone = '    # an IANA name such as Europe/Lisbon: timestamps have no time zone and are read as UTC';
  const shared = sharedTime(files);
  if (shared.length === 0) return isOpen ? [`#time: { zone: ___ }${zone}`] : [];
  return ['time:', ...shared.map((key) => keyLine(key, '  ')), ...(isOpen ? [`#  zone: ___${zone}`] : [])];
}

function sharedTime(files: readonly FileDraft[]): readonly DraftKey[] {
  const all = files
    .flatMap((f) => f.time)
    .filter(({ key }) => key === 'order' || key === 'year' || key === 'format');
  const firsts = all.filter((key, i) => all.findIndex((k) => k.key === key.key) === i);
  return firsts.filter(({ key, value }) => all.every((k) => k.key !== key || k.value === value));
}

function fileLines(file: FileDraft, files: readonly FileDraft[]): readonly string[] {
  const shared = sharedTime(files);
  const own = file.time.filter((key) => !shared.some((s) => s.key === key.key));
  const time = own.length === 0 ? [] : ['    time:', ...own.map((key) => keyLine(key, '      '))];
  const said = file.isGuess ? ': its layout is not known; this is a guess. It begins' : ' begins';
  return [
    `  # ${printable(file.file)}${said}`,
    ...file.samples.map((sample) => `  #   ${printable(sample)}`),
    `  - match: ${quoted(matchFor(file.file, files))}`,
    ...file.keys.map((key) => keyLine(key, '    ')),
    ...time,
  ];
}

/** What a rule for a file matches: the base name; with its folder where another file has that name too. */
export function matchFor(file: string, files: readonly Pick<FileDraft, 'file'>[]): string {
  const parts = (name: string): readonly string[] => name.split(/[/\\]/);
  const base = parts(file).at(-1) ?? file;
  const isAlone = files.filter((f) => parts(f.file).at(-1) === base).length === 1;
  const name = isAlone ? base : `*${parts(file).slice(-2).join('/')}`;
  return isAlone ? name.replace(/[*?]/g, '?') : name;
}

function keyLine({ key, value, because }: DraftKey, indent: string): string {
  const why = because === null ? '' : `    # ${printable(because)}`;
  return `${indent}${key}: ${valueText(value)}${why}`;
}

function valueText(value: DraftKey['value']): string {
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return /^[a-z][a-z-]*$/.test(value) ? value : quoted(value);
  return `{ ${Object.entries(value)
    .map(([key, name]) => `${key}: ${quoted(name)}`)
    .join(', ')} }`;
}

/** Which words may stand for the blanks. */
function signalLines(): readonly string[] {
  const states = stateSignals.map((signal) => {
    const values = stateValues[signal];
    return values === null ? signal : `${signal} (${values.join(', ')})`;
  });
  return [
    `# Signals that are a state: ${states.join('; ')}.`,
    `# Happenings: ${happenings.join(', ')}. Of parameters also: ${gauges.join(', ')}.`,
  ];
}

/** A name that is longer is none of a parameter, and YAML takes no longer key. Source: YAML 1.2.2 (2021), section 7.4.2: 1,024 characters. */
const longestName = 500;

/** A rule for each parameter, with its values in it. */
function parameterLines(wordings: readonly SeenWording[]): readonly string[] {
  const parameters = wordings.filter((w) => w.kind === 'parameter' && w.name.length <= longestName);
  return parameters.slice(0, mostRules).map((parameter) => {
    const values = wordings.filter((w) => w.kind === 'value' && w.name === parameter.name);
    return ruleLine(ruleFor(parameter, values), parameter);
  });
}

/** Two rules with one pattern would hide each other: of those that are understood none is needed. */
function messageLines(messages: readonly SeenWording[]): readonly string[] {
  const shown = messages
    .filter((w) => w.understood?.signal !== null && w.understood?.signal !== 'note')
    .slice(0, mostRules);
  return shown.map((wording) => {
    const rule = ruleFor(wording);
    const isAlone = shown.filter((w) => w.pattern === wording.pattern).length === 1;
    return ruleLine({ ...rule, isOn: rule.isOn && isAlone }, wording);
  });
}

function ruleLine({ yaml, isOn, hint }: DraftRule, { count, first }: SeenWording): string {
  const times = count === 1 ? 'once' : `${count} times`;
  const perhaps = hint === '' ? '' : `; perhaps ${hint}`;
  const example = printable(first.text.slice(0, longestExample));
  return `${isOn ? '' : '#'}  ${yaml}    # ${times}${perhaps}; first in ${printable(first.file)}, line ${first.line}: ${example}`;
}
