import { snapshotsByRole, snapshotsPerRole } from '../../../samples/exports.ts';
import { pairSignals } from '../../../samples/polls.ts';
import { type Random, seeded } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import { plain } from '../../../samples/wordings.ts';
import { withClockAhead } from '../../support/stories/clock-ahead.ts';
import { drawStamp, dressJournal, dressNotes } from '../../support/stories/dress-journal.ts';
import { dressPoll } from '../../support/stories/dress-poll.ts';
import {
  type Dressed,
  type DressedFile,
  type Dressing,
  dressed,
  type Files,
} from '../../support/stories/dressing.ts';
import { dressings } from '../../support/stories/dressings.ts';
import { isStamped, joinLines, timedLines } from '../../support/stories/timed-lines.ts';

/** Exports that the stories of the suite do not come as. */
const more: readonly Dressing[] = [
  {
    id: 'poll-journal-and-notes',
    dress: (story, random) =>
      dressed('poll-journal-and-notes', [
        dressPoll(story, { file: 'poll.csv' }, random),
        dressJournal(story, { file: 'journal.csv' }, random),
        dressNotes(story, 'notes.txt'),
      ]),
  },
  {
    id: 'two-text-logs',
    dress: (story, random) =>
      dressed('two-text-logs', [
        dressJournal(story, { file: 'pair.log', form: 'text' }, random),
        dressJournal(story, { file: 'again.log', form: 'text' }, random),
      ]),
  },
  roles('roles-beside-each-other', snapshotsByRole),
  roles('a-row-per-role', snapshotsPerRole),
];

/** Every kind of export that the fuzzer begins from. */
export const exports: readonly Dressing[] = [...dressings, ...more];

/** A poll that names roles and never a place. */
function roles(id: string, write: typeof snapshotsByRole): Dressing {
  return {
    id,
    dress: (story, random) => {
      const spacingSeconds = Math.round(5 + 55 * random());
      const phaseSeconds = Math.floor(1000 * spacingSeconds * random()) / 1000;
      const { stamp, resolutionSeconds } = drawStamp(random);
      const style = { spacingSeconds, phaseSeconds, stamp, delimiter: ',', wording: plain };
      const signals = new Set(['role', 'serial', 'model', 'firmware', 'light', ...pairSignals]);
      const source = { file: 'roles.csv', kind: 'poll', signals, spacingSeconds, resolutionSeconds } as const;
      const file: DressedFile = { text: write(story, style), source: { ...source, aheadSeconds: 0 } };
      return dressed(id, [file]);
    },
  };
}

/** What can be done to a dressing before the fuzzer changes it; `null` where it cannot be done. */
export interface Shape {
  readonly id: string;
  shape(base: Dressing, story: Story, seed: number): Dressed | null;
}

/** Every shape; `others` tells what happens to the other pairs of a file. */
export function shapes(others: (seed: number) => Story): readonly Shape[] {
  return [
    { id: 'as it is', shape: (base, story, seed) => base.dress(story, seeded(seed)) },
    {
      id: 'several pairs',
      shape: (base, story, seed) => severalPairs(base, [story, ...otherPairs(story, seed, others)], seed),
    },
    {
      id: 'clocks differ',
      shape: (base, story, seed) => clocksDiffer(base.dress(story, seeded(seed)), seeded(seed ^ 0xc10c)),
    },
    {
      id: 'in pieces',
      shape: (base, story, seed) => inPieces(base.dress(story, seeded(seed)), seeded(seed ^ 0x91ec)),
    },
  ];
}

/** One or two other pairs, whose stories begin when that of the first does. */
function otherPairs(story: Story, seed: number, others: (seed: number) => Story): readonly Story[] {
  const names = ['RO1', 'RO2', 'RO3', 'RO4'].filter((name) => name !== story.pair);
  return names.slice(0, 1 + (seed % 2)).map((pair, index) => {
    const other = others(seed + 1_000_000 * (index + 1));
    const move = (time: number): number => time + story.from - other.from;
    const events = other.events.map((e) => ({ ...e, time: move(e.time) }));
    return { ...other, pair, from: story.from, to: move(other.to), events };
  });
}

/** The files of several pairs, those of one name as one, its lines in the order of time; notes are of one pair each. */
function severalPairs(base: Dressing, stories: readonly Story[], seed: number): Dressed | null {
  // Drawn from the same numbers, so that all pairs are exported in one style.
  const [own, ...others] = stories.map((story) => ({
    pair: story.pair,
    ...base.dress(story, seeded(seed)),
  }));
  if (own === undefined) return null;
  const merged = Object.entries(own.files).map(([name, text]): readonly [string, string] => [
    name,
    isStamped(text) ? inOneFile([text, ...others.map((o) => o.files[name] ?? '')]) : text,
  ]);
  const notes = others.flatMap(({ pair, files }) =>
    Object.entries(files)
      .filter(([, text]) => !isStamped(text))
      .map(([name, text]) => [`${pair}-${name}`, text] as const),
  );
  return { ...own, files: Object.fromEntries([...merged, ...notes]) };
}

function inOneFile(texts: readonly string[]): string {
  const [first = [], ...rest] = texts.map((text) => timedLines(text));
  const heads = first.filter(({ time }) => time === null);
  const rows = [first, ...rest].flat().filter(({ time }) => time !== null);
  return joinLines([...heads, ...rows.sort((a, b) => (a.time ?? 0) - (b.time ?? 0))]);
}

/**
 * One of several stamped files is up to three minutes ahead or behind. Not of two journals: by the contract the first that is given
 * is the one whose clock counts, so their order may change the answer.
 */
function clocksDiffer(whole: Dressed, random: Random): Dressed | null {
  const names = Object.keys(whole.files).filter((name) => isStamped(whole.files[name] ?? ''));
  const name = names[Math.floor(random() * names.length)];
  const journals = whole.sources.filter(({ kind }) => kind === 'journal');
  if (name === undefined || journals.length > 1 || Object.keys(whole.files).length < 2) return null;
  const seconds = Math.round(360 * random()) - 180;
  return { ...withClockAhead(whole, name, seconds), isBeyondSources: true };
}

/** Each stamped file as two or three, one after the other in time. */
function inPieces(whole: Dressed, random: Random): Dressed {
  const files: Files = Object.fromEntries(
    Object.entries(whole.files).flatMap(([name, text]) =>
      isStamped(text) ? pieces(name, text, 2 + Math.floor(2 * random()), random) : [[name, text]],
    ),
  );
  const sources = whole.sources.flatMap((source) =>
    Object.keys(files)
      .filter((name) => name.replace(/^piece-\d-/, '') === source.file)
      .map((file) => ({ ...source, file, isPart: true })),
  );
  return { ...whole, files, sources, isBeyondSources: true };
}

function pieces(name: string, text: string, count: number, random: Random): readonly [string, string][] {
  const lines = timedLines(text);
  const heads = lines.filter(({ time }) => time === null);
  const rows = lines.filter(({ time }) => time !== null);
  const times = [...new Set(rows.flatMap(({ time }) => time ?? []))].sort((a, b) => a - b);
  const cuts = Array.from({ length: count - 1 }, () => times[Math.floor(times.length * random())] ?? 0);
  const bounds = [Number.NEGATIVE_INFINITY, ...cuts.sort((a, b) => a - b), Number.POSITIVE_INFINITY];
  return bounds.slice(1).flatMap((to, index): [string, string][] => {
    const from = bounds[index] ?? to;
    const own = rows.filter(({ time }) => time !== null && time >= from && time < to);
    return own.length === 0 ? [] : [[`piece-${index + 1}-${name}`, joinLines([...heads, ...own])]];
  });
}
