import { expect, test } from 'vitest';
import { program } from '../../support/relations/command.ts';
import { relations } from '../../support/relations/relations.ts';
import { changeOf, changesOfOne, exportOf } from './changed-exports.ts';
import { exports, shapes } from './exports.ts';
import { bothRelated, fuzzRelations } from './fuzz-relations.ts';
import { relatedText } from './related-text.ts';
import { happenings } from './told-stories.ts';

const nothing = (): void => undefined;

test('48 changed exports: every relation holds', async () => {
  const found = await fuzzRelations(48, 0, program, nothing);
  expect(found.failures, relatedText(found)).toEqual([]);
  expect(relatedText(found)).toContain('48 changed exports, 0 failed');
}, 300_000);

test('a change is the same for the same number, and each number of an export another', () => {
  const made = exportOf(7 * changesOfOne);
  expect(exportOf(7 * changesOfOne + 3)).toEqual(made);
  const changes = Array.from({ length: changesOfOne }, (_, index) =>
    changeOf(7 * changesOfOne + index, made, relations),
  );
  expect(changeOf(7 * changesOfOne, made, relations).changed.given).toEqual(changes[0]?.changed.given);
  expect(new Set(changes.map(({ relation, changed }) => relation.id + changed.what)).size).toBe(changesOfOne);
});

test('everything that may happen, and every kind and shape of export, is among 120 exports', () => {
  const met = new Set(
    Array.from({ length: 120 }, (_, index) => exportOf(index * changesOfOne)).flatMap(({ shape }) => shape),
  );
  const all = [happenings, exports, shapes((seed) => exportOf(seed).told.story)].flat().map(({ id }) => id);
  expect(all.filter((id) => !met.has(id))).toEqual([]);
}, 120_000);

test('what breaks a relation is told with its number, and given to be kept', async () => {
  const [kept, whole] = [new Set<number>(), await program(exportOf(0).dressed)];
  // It forgets all it knows as soon as a name holds more than letters and a suffix.
  const forgetful: typeof program = async ({ files }) =>
    Object.keys(files).every((name) => /^[a-z-]+(-\d)?\.\w+$/.test(name))
      ? whole
      : { analysed: { ...whole.analysed, timelines: [], findings: [] }, swaps: [] };
  const found = await fuzzRelations(changesOfOne, 0, forgetful, (number) => kept.add(number));
  const packed = found.failures.find(({ relation }) => relation === 'archive');
  expect(packed?.differences.length).toBeGreaterThan(0);
  expect([...kept]).toEqual(found.failures.map(({ number }) => number));
  expect(relatedText(found)).toContain(`FAILED ${packed?.number} (archive; `);
  expect(relatedText(found)).toContain(`${changesOfOne} changed exports, ${found.failures.length} failed`);
});

test('no answer at all is a failure', async () => {
  let asked = 0;
  const falling: typeof program = async (given) => {
    asked += 1;
    if (asked > 1) throw new Error('It fell.');
    return program(given);
  };
  const found = await fuzzRelations(2, 0, falling, nothing);
  expect(found.failures.map(({ differences }) => differences[0]?.about)).toEqual(['error', 'error']);
});

test('two halves count as one run', async () => {
  const [one, other] = [
    await fuzzRelations(8, 0, program, nothing),
    await fuzzRelations(8, 8, program, nothing),
  ];
  expect(bothRelated(one, other)).toEqual(await fuzzRelations(16, 0, program, nothing));
}, 120_000);
