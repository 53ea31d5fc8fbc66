import { mkdirSync, writeFileSync } from 'node:fs';
import { diagnose } from '../../../src/pipeline.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../read-text.ts';
import { dressings } from './dress.ts';
import { soundStoryOf } from './sound.ts';
import { type CauseStory, causeNames, noCause, storyOf } from './stories.ts';

/** What a story was told of (`null`: of nothing), and what came first. */
export interface Answer {
  readonly cause: string | null;
  readonly number: number;
  readonly dressing: string;
  readonly first: string;
}

/**
 * `npm run causes -- 40 1`: so many stories of each cause and five times as many sound pairs, from a seed; which cause comes first.
 * `npm run causes -- CAUSE NUMBER SEED` (or `sound NUMBER SEED`) shows one, its exports in `out/causes`.
 */
export async function runCauses(count = '40', seed = '1', again?: string): Promise<string> {
  if (!/^\d+$/.test(count)) return showOne(count, Number(seed), Number(again ?? '1'));
  const answers = await answersOf(Number(count), Number(count) * 5, Number(seed));
  return tableOf(answers);
}

/** The answers to so many stories of each cause, and to so many sound pairs; both are the same for the same seed. */
export async function answersOf(count: number, sound: number, seed: number): Promise<readonly Answer[]> {
  const answers: Answer[] = [];
  for (const cause of [...causeNames, noCause])
    for (let number = 0; number < count; number += 1)
      answers.push(await answerTo(storyOf(cause, number, seed), cause, number));
  for (let number = 0; number < sound; number += 1)
    answers.push(await answerTo(soundStoryOf(number, seed), null, number));
  return answers;
}

async function answerTo(story: CauseStory, cause: string | null, number: number): Promise<Answer> {
  const diagnosis = await diagnosed(story);
  const first = diagnosis.causes[0]?.id ?? (diagnosis.healthy ? 'healthy' : 'none');
  return { cause, number, dressing: story.dressing, first };
}

async function diagnosed({ files, pair }: CauseStory): Promise<Diagnosis> {
  return diagnose(await analyseTexts(files), pair);
}

async function showOne(cause: string, number: number, seed: number): Promise<string> {
  const story = cause === 'sound' ? soundStoryOf(number, seed) : storyOf(cause, number, seed);
  mkdirSync('out/causes', { recursive: true });
  for (const [name, text] of Object.entries(story.files)) writeFileSync(`out/causes/${name}`, text);
  const { causes, doubted, unjudged } = await diagnosed(story);
  const points = causes.map((c) => [
    `${c.rank} ${c.id} ${c.decibans}`,
    ...[...c.for, ...c.against].map((p) => `    ${p.statement}`),
  ]);
  const others = doubted.map((c) => [`- ${c.id}`, ...c.against.map((p) => `    ${p.statement}`)]);
  return [
    `${cause} ${number} (${story.dressing}) of ${story.pair}: node dist/steadypair.mjs diagnose out/causes --pair ${story.pair}`,
    ...points.flat(),
    ...others.flat(),
    `not judged: ${unjudged.map((u) => u.id).join(', ')}`,
  ].join('\n');
}

/** What came first for each cause, by dressing, and which stories were answered wrongly. */
export function tableOf(answers: readonly Answer[]): string {
  const told = answers.filter((a) => a.cause !== null && a.cause !== noCause);
  const unknown = answers.filter((a) => a.cause === noCause);
  const guessed = unknown.filter((a) => a.first !== noCause);
  const right = told.filter((a) => a.first === a.cause);
  const sound = answers.filter((a) => a.cause === null);
  const wrong = sound.filter((a) => a.first !== 'healthy');
  return [
    'what came first, of the stories of each cause',
    ...causeNames.map((cause) =>
      lineOf(
        cause,
        told.filter((a) => a.cause === cause),
      ),
    ),
    '',
    'by dressing',
    ...dressings.map((dressing) =>
      lineOf(
        dressing,
        told.filter((a) => a.dressing === dressing),
      ),
    ),
    '',
    `right: ${share(right.length, told.length)}; sound pairs with a cause: ${wrong.length} of ${sound.length}`,
    `in trouble for a reason that no log tells, with a cause: ${guessed.length} of ${unknown.length}`,
    ...guessed.map((a) => `  ${noCause} ${a.number} (${a.dressing}): ${a.first}`),
    ...wrong.map((a) => `  sound ${a.number} (${a.dressing}): ${a.first}`),
  ].join('\n');
}

function lineOf(name: string, answers: readonly Answer[]): string {
  const right = answers.filter((a) => a.first === a.cause);
  const others = [...new Set(answers.map((a) => a.first))].flatMap((first) => {
    const same = answers.filter((a) => a.first === first && a.first !== a.cause);
    const shown = same.length > 8 ? '' : ` (${same.map((a) => a.number).join(' ')})`;
    return same.length === 0 ? [] : [`${first} ${same.length}${shown}`];
  });
  return `  ${name.padEnd(22)} ${share(right.length, answers.length).padStart(16)}  ${others.join(', ')}`;
}

function share(some: number, all: number): string {
  return `${some} of ${all} ${((100 * some) / Math.max(1, all)).toFixed(0).padStart(3)} %`;
}
