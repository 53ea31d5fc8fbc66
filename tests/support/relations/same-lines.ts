import type { Random } from '../../../samples/random.ts';
import type { Dressed, Files } from '../stories/dressing.ts';
import { dress } from '../stories/dressings.ts';
import { swapStory } from '../stories/swap-story.ts';
import { hasDecimals, isStamped, joinLines, shiftText, timedLines } from '../stories/timed-lines.ts';
import { asItIs } from './reduce.ts';
import type { Changed, Relation, Told, View } from './relation.ts';

const dayMs = 86_400_000;

/** What must change nothing: the order of rows, other pairs, what halves are called, and when it all happened. */
export const sameLines: readonly Relation[] = [
  { id: 'row-order', kind: 'same', change: (dressed, _told, random) => shuffleRows(dressed, random) },
  { id: 'unrelated-pair', kind: 'same', change: addPair },
  { id: 'halves-renamed', kind: 'same', change: (dressed, told) => renameHalves(dressed, told) },
  { id: 'times-shifted', kind: 'same', change: (dressed, _told, random) => shiftAll(dressed, random) },
  { id: 'commands-of-another-pair', kind: 'same', change: (dressed, told) => addCommands(dressed, told) },
];

/** Rows of tables and logs in any order; not where whole seconds leave only the order of rows to tell cause from effect. */
function shuffleRows({ files, sources, phrasebook }: Dressed, random: Random): readonly Changed[] {
  return sources.flatMap(({ file, kind }) => {
    const text = files[file] ?? '';
    if (kind === 'notes' || (kind === 'journal' && !hasDecimals(text))) return [];
    const lines = timedLines(text);
    const rows = lines.filter(({ time }) => time !== null).map(({ line }) => ({ line, key: random() }));
    const heads = lines.filter(({ time }) => time === null);
    const shuffled = joinLines([...heads, ...rows.sort((a, b) => a.key - b.key)]);
    return [
      {
        what: `rows of ${file} in another order`,
        given: { files: { ...files, [file]: shuffled }, phrasebook },
      },
    ];
  });
}

const otherPair = 'OUTFALL';

/** The export of another pair beside; or in each file a pair to which the same happens, row by row. */
function addPair({ files, phrasebook }: Dressed, { seed, story }: Told, random: Random): readonly Changed[] {
  const renamed = (text: string): string =>
    text.replaceAll(new RegExp(`\\b${story.pair}\\b`, 'g'), otherPair);
  const other = dress({ ...swapStory(seed + 1_000_000).story, pair: otherPair }, seed, 'text-log');
  const added = Object.entries(other.files).map(([name, text]) => [`other-${name}`, text] as const);
  const entries = Object.entries(files);
  const beside = random() < 0.5 ? [...added, ...entries] : [...entries, ...added];
  const twins = entries.map(([name, text]): [string, string] => [
    name,
    isStamped(text) ? withTwins(text, renamed) : text,
  ]);
  return [
    { what: `the log of ${otherPair} beside`, given: { files: Object.fromEntries(beside), phrasebook } },
    {
      what: `the same of ${otherPair} in the same files`,
      given: { files: Object.fromEntries(twins), phrasebook },
    },
  ];
}

function withTwins(text: string, renamed: (text: string) => string): string {
  return joinLines(
    timedLines(text).flatMap(({ line, time }) =>
      time === null ? [{ line }] : [{ line }, { line: renamed(line) }],
    ),
  );
}

/** Halves called 1 and 2, or called by each other's names. */
function renameHalves({ files, phrasebook }: Dressed, { story }: Told): readonly Changed[] {
  const names = [
    { A: '1', B: '2' },
    { A: 'B', B: 'A' },
  ] as const;
  const unit = new RegExp(`\\b(${story.pair}-|slot )([AB])\\b`, 'g');
  // Where roles are told and no places, there is no half to call otherwise.
  if (!Object.values(files).some((text) => text.search(unit) >= 0)) return [];
  return names.map((to): Changed => {
    const rename = (half: string): string => (half === 'A' ? to.A : to.B);
    const renamed = (text: string): string =>
      text.replaceAll(unit, (_all, before, half) => `${before}${rename(half)}`);
    const view: View = { ...asItIs, half: (half) => (half === '' ? '' : half === to.A ? 'A' : 'B') };
    return {
      what: `halves A and B called ${to.A} and ${to.B}`,
      given: { files: mapped(files, renamed), phrasebook: phrasebook?.replaceAll('[AB]', '[AB12]') ?? null },
      view,
    };
  });
}

/** All stamps moved by days; where nobody wrote notes also by hours, minutes and seconds. */
function shiftAll({ files, phrasebook }: Dressed, random: Random): readonly Changed[] {
  const days = Math.ceil(400 * random()) * dayMs;
  const seconds = Math.floor(86_400 * random()) * 1000;
  const ms = Object.values(files).every(isStamped) ? days + seconds : days;
  return [
    {
      what: `all stamps ${ms / 1000} s later`,
      given: { files: mapped(files, (text) => shiftText(text, ms)), phrasebook },
      view: { ...asItIs, time: (time) => time - ms },
    },
  ];
}

/** A journal of another pair whose commands come just before every exchange of roles of this one. */
function addCommands({ files, phrasebook }: Dressed, { story }: Told): readonly Changed[] {
  const stamped = (time: number, message: string): string =>
    `${new Date(time).toISOString()},${otherPair},${message}`;
  const times = story.events.filter((e) => e.signal === 'switchover').map((e) => e.time - 5000);
  if (times.length === 0) return [];
  const rows = [
    stamped(story.from, 'partner ready'),
    ...times.map((time) => stamped(time, 'switchover command')),
    stamped(story.to, 'partner ready'),
  ];
  const commands = `time,unit,message\n${rows.join('\n')}\n`;
  return [
    {
      what: `commands of ${otherPair}`,
      given: { files: { ...files, 'commands.csv': commands }, phrasebook },
    },
  ];
}

function mapped(files: Files, change: (text: string) => string): Files {
  return Object.fromEntries(Object.entries(files).map(([name, text]) => [name, change(text)]));
}
