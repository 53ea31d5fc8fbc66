import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { platform } from '../../src/cli/platform.ts';
import {
  type FileSource,
  type Imported,
  importFiles,
  type KeptReadings,
  keptReadings,
  type Lesson,
  readPhrasebook,
  teachAll,
} from '../../src/pipeline.ts';
import { seededRandom } from '../../src/statistics/seeded-random.ts';
import { comparable } from '../support/comparable.ts';

/** The first lines of the demo site's logs, and small files in which lessons of all kinds find something to say. */
function files(): Readonly<Record<string, string>> {
  const site = join('samples', 'marrow-bay');
  const logs = readdirSync(site)
    .flatMap((story) => readdirSync(join(site, story)).map((name) => join(site, story, name)))
    .filter((path) => /ro1-\w+\.\w+$/.test(path))
    .map((path) => [
      path.split('/').slice(-1)[0] ?? '',
      readFileSync(path, 'utf8').split('\n').slice(0, 40).join('\n'),
    ]);
  const rows = (unit: string, says: readonly string[]): string =>
    says.map((text, i) => `2026-03-14T09:0${i}:00Z,${unit},${text}\n`).join('');
  return {
    ...Object.fromEntries(logs),
    'kiln.csv': `time,unit,message\n${rows('KILN7', ['twin fell out', 'twin is in step', 'nothing new'])}`,
    'weir.csv': `time,unit,message\n${rows('weir-4-east', ['light steady', 'twin fell out', 'partner ready'])}`,
    'poll.csv': `time,unit,parameter,value\n${rows('RO9-A', ['twin,yes', 'twin,no', 'light,steady', 'mode,x'])}`,
    'alike-1.csv': 'time,unit,message\n13/02/2026 09:00:00,RO8-A,partner ready\n',
    'alike-2.csv': 'time,unit,message\n01/02/2026 09:00:00,RO8-A,partner lost\n',
    'later.log': 'RO8 is what this line is about\n2026-03-14T09:00:00Z RO8 twin fell out\n',
  };
}

const lessons: readonly Lesson[] = [
  { kind: 'message', when: '^twin fell out', signal: 'partner-ready', value: 'no' },
  { kind: 'message', when: 'in step', signal: 'partner-ready', value: 'yes' },
  { kind: 'message', when: 'light', signal: 'note', value: null },
  { kind: 'message', when: 'no log says this', signal: 'fault', value: null },
  { kind: 'message', when: 'ready|active', signal: 'note', value: null, whose: 'pair' },
  { kind: 'ignore', pattern: '^nothing new$' },
  { kind: 'ignore', pattern: 'twin' },
  { kind: 'ignore', pattern: '^parameter mode' },
  { kind: 'parameter', name: 'twin', signal: 'partner-ready', values: {} },
  { kind: 'value', name: 'mode', text: 'x', signal: 'role', meaning: 'active' },
  { kind: 'value', name: 'twin', text: 'no', signal: 'partner-ready', meaning: 'no' },
  { kind: 'parameter', name: '/^(?<half>[AB]) mode$/', signal: 'role', values: { x: 'active' } },
  { kind: 'unit', pattern: '^(?<pair>weir-4)-(?<half>east|west)$' },
  { kind: 'unit', pattern: '^KILN(?<half>7)$', pair: 'KILN' },
  { kind: 'unit', pattern: '^nobody$', pair: 'NOBODY' },
  { kind: 'file', match: 'later.log', keys: { unit: 'RO8-B' } },
  { kind: 'file', match: 'poll.csv', keys: { time: { zone: 'Asia/Tokyo' } } },
  { kind: 'columns', match: 'kiln.csv', layout: 'journal', columns: { message: 'message' } },
  { kind: 'time', zone: 'Asia/Tokyo', order: null, year: null },
  { kind: 'time', zone: null, order: 'day-first', year: null },
];

interface Counted {
  readonly source: FileSource;
  opened(): number;
}

function counted(name: string, text: string): Counted {
  const bytes = new TextEncoder().encode(text);
  let opened = 0;
  const source: FileSource = {
    name,
    bytes: bytes.length,
    async *open() {
      opened += 1;
      yield bytes.slice();
    },
  };
  return { source, opened: () => opened };
}

const sources = Object.entries(files()).map(([name, text]) => counted(name, text));

async function readAll(
  some: readonly Counted[],
  phrasebook: string | null,
  kept?: KeptReadings,
): Promise<Imported> {
  return importFiles(
    some.map(({ source }) => source),
    {
      phrasebook: readPhrasebook('phrasebook.yaml', phrasebook),
      zone: null,
      order: null,
      year: null,
      sha256: platform.sha256,
      ...(kept === undefined ? {} : { kept }),
    },
  );
}

/** The names of the files that were opened meanwhile. */
async function openedBy(work: () => Promise<unknown>): Promise<readonly string[]> {
  const before = sources.map(({ opened }) => opened());
  await work();
  return sources.flatMap(({ source, opened }, i) => (opened() === before[i] ? [] : [source.name]));
}

function plain({ files: read, failures, phrasebookNotices }: Imported): unknown {
  return {
    read: comparable(read),
    failures: failures.map(({ where, what, fix, kind }) => ({ where, what, fix, kind })),
    phrasebookNotices,
  };
}

function taught(phrasebook: string | null, lesson: Lesson): string {
  return teachAll('phrasebook.yaml', phrasebook, [lesson]);
}

describe('a reading with kept readings', () => {
  test.each([1, 2, 3, 4])('gives what a whole one gives, over random lessons (seed %i)', async (seed) => {
    const random = seededRandom(seed);
    const kept = keptReadings();
    let phrasebook: string | null = null;
    let given = sources;
    for (let step = 0; step < 6; step += 1) {
      const lesson = lessons[Math.floor(random() * lessons.length)];
      if (step > 0 && lesson !== undefined) phrasebook = taught(phrasebook, lesson);
      given = sources.filter(() => random() < 0.8);
      const own = await readAll(given, phrasebook, kept);
      expect(plain(own)).toEqual(plain(await readAll(given, phrasebook)));
    }
  });

  test.each(lessons.map((lesson) => [JSON.stringify(lesson), lesson] as const))(
    'gives what a whole one gives, after %s',
    async (_, lesson) => {
      const kept = keptReadings();
      await readAll(sources, null, kept);
      const whole = await readAll(sources, taught(null, lesson));
      expect(plain(await readAll(sources, taught(null, lesson), kept))).toEqual(plain(whole));
    },
  );

  test('opens no file once more where nothing changed, and of a lesson that matches nothing only notes', async () => {
    const kept = keptReadings();
    const whole = sources.filter(({ source }) => !source.name.startsWith('later'));
    await readAll(whole, null, kept);
    expect(await openedBy(() => readAll(whole, null, kept))).toEqual([]);
    const idle = lessons.find((l) => l.kind === 'message' && l.when === 'no log says this');
    if (idle === undefined) throw new Error('There is no such lesson.');
    // Whether a text is a technician's notes is asked of all rules for messages at once.
    expect(await openedBy(() => readAll(whole, taught(null, idle), kept))).toEqual(['ro1-notes.txt']);
  });

  test('opens only the files that a lesson touches', async () => {
    const kept = keptReadings();
    await readAll(sources, null, kept);
    const touched = async (lesson: Lesson): Promise<readonly string[]> =>
      openedBy(() => readAll(sources, taught(null, lesson), kept));
    // In kiln.csv a unit named KILN7 says it, in weir.csv one that no pair is known of, in later.log RO8.
    const fell: Lesson = { kind: 'message', when: '^twin fell out', signal: 'partner-ready', value: 'no' };
    expect(await touched(fell)).toEqual(expect.arrayContaining(['kiln.csv', 'weir.csv']));
    expect(await touched(fell)).not.toContain('ro1-poll.csv');
  });

  test('opens only the file that is added', async () => {
    const kept = keptReadings();
    const [added, ...others] = sources.filter(({ source }) => /^ro\d/.test(source.name));
    if (added === undefined) throw new Error('There is no such file.');
    await readAll(others, null, kept);
    expect(await openedBy(() => readAll([added, ...others], null, kept))).toEqual([added.source.name]);
  });
});
