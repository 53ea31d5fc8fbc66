import type { ImportedFile, UnknownWording } from '../vocabulary.ts';
import { jsonEscaped } from './escape.ts';

const mostRules = 200;

/** One wording with all that the files say of it; `where` is the first place it stands in. */
interface Wanted extends UnknownWording {
  readonly where: string;
}

/**
 * A phrasebook (YAML 1.2) to start from, as it was seen: how each file was read, and a commented rule for every wording
 * that was not understood, the most frequent first. It can be read as it is; a rule counts once its `#` is gone and its
 * blanks, `___`, are filled in. Log text stands in it as quoted text only.
 */
export function draftPhrasebook(files: readonly ImportedFile[]): string {
  const wanted = wantedOf(files);
  const of = (kind: UnknownWording['kind']): readonly Wanted[] => wanted.filter((w) => w.kind === kind);
  return `${[
    '# A draft by steadypair inspect. Remove the # before a rule, put a word of the README for each ___,',
    '# and leave out values where the text itself is meant, as for firmware. What stays commented out is not used.',
    'name: my site',
    ...zoneLines(files),
    '',
    'files:',
    ...files.flatMap(fileLines),
    '',
    'units:    # a unit is a pair, a half of a pair or a role in it',
    ...of('unit').map(unitLine),
    '',
    'parameters:',
    ...parameterLines([...of('parameter'), ...of('value')]),
    '',
    'messages:    # a happening such as removed needs no value',
    ...of('message').map(messageLine),
    '',
    'ignore:',
    ...of('message').map(({ name }) => `#  - ${quoted(`^${escaped(name)}$`)}`),
  ].join('\n')}\n`;
}

/** The wordings of all files, each once. */
function wantedOf(files: readonly ImportedFile[]): readonly Wanted[] {
  const found = new Map<string, Wanted>();
  for (const { input, unknown } of files) {
    for (const wording of unknown) {
      const key = `${wording.kind} ${wording.wording}`;
      const known = found.get(key);
      found.set(key, {
        ...wording,
        where: known?.where ?? `${input.file}, line ${wording.firstLine}`,
        count: (known?.count ?? 0) + wording.count,
        values: [...new Set([...(known?.values ?? []), ...wording.values])],
      });
    }
  }
  return [...found.values()].sort((a, b) => b.count - a.count).slice(0, mostRules);
}

function zoneLines(files: readonly ImportedFile[]): readonly string[] {
  const isAssumed = files.some((f) => f.notices.some((n) => n.id === 'zone-assumed'));
  const zones = [...new Set(files.map((f) => f.input.zone))].filter((zone) => zone !== 'UTC');
  if (zones[0] !== undefined) return [`time: { zone: ${quoted(zones[0])} }`];
  return isAssumed
    ? ['#time: { zone: ___ }    # an IANA name such as Europe/Lisbon: no stamp names its zone']
    : [];
}

function fileLines({ input, columns }: ImportedFile): readonly string[] {
  const base = input.file.split(/[/\\]/).at(-1) ?? input.file;
  const keys = columns.flatMap(({ name, meaning }) =>
    meaning !== null && columnKeys.has(meaning) ? [`${meaning}: ${quoted(name)}`] : [],
  );
  const known = keys.length === 0 ? '' : `, columns: { ${keys.join(', ')} }`;
  return [`  - { match: ${quoted(base.replace(/[*?]/g, '?'))}, layout: ${input.layout}${known} }`];
}

const columnKeys = new Set([
  'time',
  'date',
  'clock',
  'unit',
  'pair',
  'half',
  'role',
  'parameter',
  'value',
  'message',
  'severity',
  'class',
]);

function unitLine({ name, ...wanted }: Wanted): string {
  return `#  - { pattern: ${quoted(`^${escaped(name)}$`)}, pair: ___, half: ___ }${seen(wanted)}`;
}

/** A rule for each parameter, with its values in it; values of a parameter that is known already stand under its name too. */
function parameterLines(wanted: readonly Wanted[]): readonly string[] {
  const names = [...new Set(wanted.map((w) => w.name))];
  return names.flatMap((name) => {
    const own = wanted.filter((w) => w.name === name);
    const [first] = own;
    if (first === undefined) return [];
    const values = [...new Set(own.flatMap((w) => [...w.values]))].map((value) => `${quoted(value)}: ___`);
    const count = own.reduce((sum, w) => sum + w.count, 0);
    return [
      `#  ${quoted(name)}: { signal: ___, values: { ${values.join(', ')} } }${seen({ ...first, count })}`,
    ];
  });
}

function messageLine({ name, ...wanted }: Wanted): string {
  return `#  - { when: ${quoted(`^${escaped(name)}$`)}, signal: ___, value: ___ }${seen(wanted)}`;
}

function seen({ count, where }: Pick<Wanted, 'count' | 'where'>): string {
  return `    # ${count === 1 ? 'once' : `${count} times`}, first in ${printable(where)}`;
}

/** Text in double quotes: JSON's are YAML's too. Source: YAML 1.2.2 (2021), sections 1.2 and 7.3.1. */
function quoted(text: string): string {
  return jsonEscaped(JSON.stringify(text).replace(/[^\u0020-\u007e\u00a0-\ud7ff\ue000-\ufefe]/g, asEscape));
}

function asEscape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

/** Without anything that could end a comment. */
function printable(text: string): string {
  return quoted(text).slice(1, -1);
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
