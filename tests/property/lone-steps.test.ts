/** Steps that stay in the columns of their file: what they say is what the general way says, to the letter. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changesFrom } from '../../src/change-columns.ts';
import { allChanges } from '../../src/changes.ts';
import { defaultLimits } from '../../src/limits.ts';
import { groupByTrack } from '../../src/timeline/groups.ts';
import { loneSteps } from '../../src/timeline/lone-steps.ts';
import { mergeSightings } from '../../src/timeline/merge.ts';
import { partsByPair, sightingsOf } from '../../src/timeline/seen-parts.ts';
import { noBreaks, toSteps } from '../../src/timeline/states.ts';
import { resolveSubjects } from '../../src/timeline/subjects.ts';
import type { ImportedFile, TimelineEvent } from '../../src/vocabulary.ts';
import { readText } from '../support/read-text.ts';

const { rules } = defaultLimits;
const begin = Date.UTC(2026, 2, 14, 9);
const values = ['steady', 'flashing', 'off', ''] as const;

/** Rows of one lamp: seconds after the begin, and what it showed; some go back, some share their stamp, some are silent for long. */
const rows = fc.array(
  fc.record({
    step: fc.oneof(fc.integer({ min: 0, max: 12 }), fc.constantFrom(-3, 400)),
    value: fc.constantFrom(...values),
  }),
  { minLength: 1, maxLength: 60 },
);

/** The rows as a poll, or as a journal, with a second unit beside it that is read all the while. */
async function read(
  steps: readonly { readonly step: number; readonly value: string }[],
  isPoll: boolean,
): Promise<ImportedFile> {
  let at = begin;
  const lines = steps.flatMap(({ step, value }) => {
    at += step * 1000;
    const stamp = new Date(at).toISOString();
    if (!isPoll) return value === '' ? [] : [`${stamp},RO1-A,light ${value}`];
    return [`${stamp},RO1-A,light,${value}`, `${stamp},RO1-A,link-a,up`];
  });
  const header = isPoll ? 'time,unit,parameter,value' : 'time,unit,message';
  const first = isPoll ? [] : [`${new Date(begin).toISOString()},RO1-B,partner ready`];
  return readText('lamp.csv', [header, ...first, ...lines, ''].join('\n'));
}

/** The steps of the lamp both ways, each with what an event says of it. */
function bothWays(file: ImportedFile, breaks = noBreaks): readonly (readonly string[] | null)[] {
  const sightings = [...partsByPair([file], []).values()].flatMap((parts) => sightingsOf(parts));
  const resolved = resolveSubjects(sightings, { first: null, flips: [] }, ['A', 'B'], rules);
  const list = groupByTrack(resolved).get('A\nlight') ?? [];
  // Each by its name: a step that is still columns has no fields of its own.
  const said = (step: Omit<TimelineEvent, 'pair' | 'half' | 'signal'>): string =>
    JSON.stringify([
      [step.kind, step.time, step.earliest, step.resolution, step.value, step.before],
      [step.initial, step.concluded],
      step.sources.map(({ file: of, line, text, count, printed }) => [of, line, text, count, printed]),
    ]);
  const lone = list.length === 0 ? [] : loneSteps(list, breaks);
  return [lone?.map(said) ?? null, toSteps(mergeSightings(list, rules), breaks).map(said)];
}

test('of any poll and any journal of one stream', async () => {
  let told = 0;
  await fc.assert(
    fc.asyncProperty(rows, fc.boolean(), async (steps, isPoll) => {
      const [lone, general] = bothWays(await read(steps, isPoll));
      told += lone?.length ?? 0;
      expect(lone).toEqual(general);
    }),
    { numRuns: 120, seed: 20 },
  );
  expect(told).toBeGreaterThan(300);
});

test('of changes in any order of time, first readings and readings after silence among them', async () => {
  const file = await read([{ step: 0, value: 'steady' }], true);
  const [first] = allChanges(file.changes);
  const change = fc.record({
    time: fc.integer({ min: 0, max: 40 }),
    spacing: fc.integer({ min: 0, max: 15 }),
    value: fc.constantFrom('steady', 'flashing', null),
    before: fc.constantFrom('steady', 'flashing', null),
    kind: fc.constantFrom('reading' as const, 'entry' as const),
  });
  const printed = { time: begin, earliest: begin };
  const source = { file: 'other.log', line: 1, text: 'partner absent', count: 1, printed };
  const broken = fc.integer({ min: 0, max: 40 }).map((second) => {
    const time = begin + second * 1000;
    return { kind: 'entry' as const, time, earliest: time, resolution: 0, sources: [source] as const };
  });
  const breaks = fc.array(broken, { maxLength: 3 }).map((all) => all.sort((a, b) => a.time - b.time));
  let lonely = 0;
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 30 }), breaks, (list, restating) => {
      const changes = list.flatMap(({ time, spacing, value, before, kind }, line) => {
        const at = begin + time * 1000;
        const told = { kind, value, time: at, earliest: kind === 'entry' ? at : at - spacing * 1000 };
        return first === undefined ? [] : [{ ...first, ...told, before, line: line + 2 }];
      });
      const told = { ...file, changes: changesFrom(changes) };
      const [lone, general] = bothWays(told, { ...noBreaks, restating, lostValue: 'off' });
      if (lone !== null && restating.length > 0) lonely += 1;
      // What a break may touch is left to the general way.
      expect(lone ?? general).toEqual(general);
      if (restating.length === 0) expect(lone).not.toBeNull();
    }),
    { numRuns: 3000, seed: 20 },
  );
  expect(lonely).toBeGreaterThan(50);
});

test('changes keep what they say in columns, whatever it is', () => {
  const text = fc.oneof(fc.string({ unit: 'grapheme' }), fc.constant('\uFEFFé\u0000\u202E'));
  const subject = fc.record({
    pair: fc.constantFrom('RO1', 'RO2'),
    half: fc.constantFrom('A', 'B', null),
    role: fc.constantFrom('active' as const, null),
  });
  const change = fc.record({
    kind: fc.constantFrom('reading' as const, 'entry' as const, 'note' as const),
    subject,
    signal: fc.constantFrom('light' as const, 'role' as const, 'note' as const),
    value: fc.oneof(text, fc.constant(null)),
    before: fc.constantFrom('steady', null),
    time: fc.integer(),
    earliest: fc.integer(),
    stream: fc.nat(3),
    line: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
    text,
    count: fc.integer({ min: 1, max: 4 }),
  });
  fc.assert(
    fc.property(fc.array(change, { maxLength: 40 }), (list) => {
      expect(allChanges(changesFrom(list))).toEqual(list);
    }),
    { numRuns: 300, seed: 20 },
  );
});
