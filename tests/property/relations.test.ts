/** Relations between the answers to two versions of the same files: those that hold, and that each of all of them fires. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { CheckStatus } from '../../src/vocabulary.ts';
import { program } from '../support/relations/command.ts';
import { differences } from '../support/relations/compare.ts';
import type { Answerer, Given, Relation } from '../support/relations/relation.ts';
import { relations } from '../support/relations/relations.ts';
import { relationsText } from '../support/relations/relations-text.ts';
import { casesOf, runRelations } from '../support/relations/run-relations.ts';
import { timedLines } from '../support/stories/timed-lines.ts';
import type { Verified } from '../support/verify-files.ts';

/** Stories whose exports are small: a long poll takes long and shows no more. */
const cases = [...casesOf(60, 0)]
  .filter(({ dressed }) => Object.values(dressed.files).join('').length < 120_000)
  .slice(0, 24);

test('the relations that hold do so over 24 stories', async () => {
  const outcome = await runRelations(relations, cases, program);
  expect(cases).toHaveLength(24);
  for (const { id } of relations) expect([id, outcome.tried.get(id) ?? 0]).not.toEqual([id, 0]);
  expect(outcome.violations, relationsText(outcome)).toEqual([]);
}, 180_000);

let real: Verified;
beforeAll(async () => {
  const [first] = cases;
  if (first === undefined) throw new Error('There is no story.');
  real = await program(first.dressed);
});

/** An answer in which every check of every pair has one status. */
function saying(status: CheckStatus): Verified {
  const verdict = status === 'pass' ? 'verified' : status === 'fail' ? 'not-verified' : 'inconclusive';
  const swaps = real.swaps.flatMap((swap) =>
    ['RO1', 'RO2', 'RO3', 'RO4'].map((pair) => {
      const checks = swap.checks.map((c) => ({ ...c, status }));
      return { ...swap, pair, verdict, checks, halves: swap.halves, bringUps: [], switchovers: [] } as const;
    }),
  );
  return { analysed: { ...real.analysed, timelines: [], findings: [] }, swaps };
}

/** A program with one fault: it takes for good whatever has some trait that is beside the point. */
function taking(isGood: (files: Given['files'], texts: readonly string[]) => boolean): Answerer {
  return async ({ files }) => {
    const texts = Object.values(files).map((content) =>
      typeof content === 'string' ? content : new TextDecoder().decode(content),
    );
    return saying(isGood(files, texts) ? 'pass' : 'fail');
  };
}

function timesOf(text: string): readonly number[] {
  return timedLines(text).flatMap(({ time }) => time ?? []);
}

function steps(text: string): readonly number[] {
  const times = timesOf(text);
  return times
    .slice(1)
    .map((time, index) => time - (times[index] ?? time))
    .filter((step) => step > 0);
}

const faulty: Readonly<Record<string, Answerer>> = {
  'file-order': taking((files) => (Object.keys(files)[0] ?? '') <= (Object.keys(files).at(-1) ?? '')),
  'file-twice': taking((_files, texts) => new Set(texts).size === texts.length),
  'split-file': taking((files) => Object.keys(files).length <= 2),
  'encoding-and-delimiter': taking((_files, texts) =>
    texts.every((text) => /^[\x20-\x7e\s]+$/.test(text) && !text.includes(';')),
  ),
  archive: taking((files) => !/\.(gz|zip)\b/.test(Object.keys(files).join())),
  'row-order': taking((_files, texts) =>
    texts.every((text) => timesOf(text)[0] === Math.min(...timesOf(text))),
  ),
  'unrelated-pair': taking((_files, texts) => !texts.join().includes('OUTFALL')),
  'halves-renamed': taking((_files, texts) => /RO\d[- ](slot )?A/.test(texts.join())),
  'times-shifted': taking(
    (_files, texts) => new Date(timesOf(texts[0] ?? '')[0] ?? 0).getUTCDate() % 2 === 0,
  ),
  'commands-of-another-pair': taking((_files, texts) => texts.join().includes('switchover command')),
  'source-dropped': taking((files) => Object.keys(files).length < 2),
  'span-cut-out': taking((_files, texts) =>
    texts.some((text) => Math.max(...steps(text)) > 3 * Math.min(...steps(text))),
  ),
  'poll-thinned': taking((_files, texts) => texts.join().split('\n').length < 400),
  'log-cut-short': taking(
    (_files, texts) => Math.max(...texts.map((text) => Math.max(...steps(text), 0))) < 1_200_000,
  ),
  'clock-shifted': taking((_files, texts) => {
    const begins = texts.map((text) => timesOf(text)[0] ?? 0);
    return Math.max(...begins) - Math.min(...begins) > 150_000;
  }),
};

describe.each(relations)('$id', (relation) => {
  test('reports a program that it is meant to find out', async () => {
    const wrong = faulty[relation.id];
    if (wrong === undefined) throw new Error('There is no faulty program for it.');
    const outcome = await runRelations([relation], cases, wrong);
    expect(outcome.violations.length).toBeGreaterThan(0);
    const [first] = outcome.violations;
    expect(relationsText(outcome)).toContain(`seed ${first?.seed}, ${first?.dressing}, ${first?.what}`);
  });
});

// What follows neither the stamps nor the names of the files is wrong where these change.
const constant = relations.filter(({ id }) => id !== 'times-shifted' && id !== 'halves-renamed');

test.each(constant)('$id is quiet about a program that always says the same', async (relation) => {
  for (const status of ['pass', 'fail', 'inconclusive', 'not-observed'] as const) {
    const outcome = await runRelations([relation], cases.slice(0, 6), async () => saying(status));
    expect(outcome.violations).toEqual([]);
  }
});

test('every faulty program is meant for a relation, and no relation is without', () => {
  expect(Object.keys(faulty).sort()).toEqual(relations.map((r) => r.id).sort());
});

describe('weaker files', () => {
  const relation: Relation = { id: 'x', kind: 'weaker', change: () => [] };
  const given = { files: {}, phrasebook: null };
  const statuses = ['pass', 'fail', 'inconclusive', 'not-observed'] as const;
  const pairs = statuses.flatMap((before) => statuses.map((after) => [before, after] as const));
  const found = (
    before: CheckStatus,
    after: CheckStatus,
    mayFail: boolean,
    mayPass: readonly string[],
  ): number => {
    const changed = { given, what: '', mayPass: new Set(mayPass) };
    return differences({ ...relation, mayFail }, 'RO1', saying(before), saying(after), changed).length;
  };
  test.each(pairs)('that turn %s into %s', (before, after) => {
    const isWrong = (before === 'pass' && after === 'fail') || (before === 'fail' && after === 'pass');
    expect(found(before, after, false, []) > 0).toBe(isWrong);
    expect(found(before, after, true, []) > 0).toBe(before === 'fail' && after === 'pass');
  });
  test('may heal what is not broken in them, and the verdict only with all of it', () => {
    const all = saying('fail').swaps[0]?.checks.map((c) => c.id) ?? [];
    expect(found('fail', 'pass', false, all)).toBe(0);
    // The check that may not, and the verdict.
    expect(found('fail', 'pass', false, all.slice(1))).toBe(2);
  });
});
