import type { Interval } from '../vocabulary.ts';
import type { Answer } from './case.ts';

/** Names of files, and what they are called in a bundle. */
export type Renamed = ReadonlyMap<string, string>;

/** True if two answers come to the same, apart from the names of files: verdicts and checks, or stage and causes. */
export function sameAnswer(one: Answer, other: Answer, renamed: Renamed): boolean {
  return outline(one, renamed) === outline(other, renamed);
}

/** True if two answers come to the same, no matter what pairs and files are called. */
export function sameVerdict(one: Answer, other: Answer): boolean {
  return outline(one, null) === outline(other, null);
}

function outline(answer: Answer, renamed: Renamed | null): string {
  const said = (text: string): string | null => (renamed === null ? null : withNames(text, renamed));
  if (answer.kind === 'diagnose') {
    const { healthy, stage, causes, unjudged } = answer.diagnosis;
    return JSON.stringify([
      healthy,
      stage,
      causes.map(({ id, rank }) => [id, rank]),
      unjudged.map(({ id }) => id),
    ]);
  }
  const swaps = answer.verification.swaps.map(({ from, to, verdict, statement, checks }) =>
    JSON.stringify([
      from,
      to,
      verdict,
      said(statement),
      checks.map((check) => [check.id, check.status, said(check.statement)]),
    ]),
  );
  // Pairs are in the order of their names, which a mask changes.
  return JSON.stringify(renamed === null ? swaps.sort() : swaps);
}

function withNames(text: string, renamed: Renamed): string {
  const longestFirst = [...renamed].sort(([a], [b]) => b.length - a.length);
  return longestFirst.reduce((said, [from, to]) => said.replaceAll(from, to), text);
}

const dayMs = 86_400_000;

/** The time that an answer rests on: from a day before it begins. Empty where it rests on no time at all. */
export function spansOf(answer: Answer): readonly Interval[] {
  if (answer.kind === 'verify')
    return answer.verification.swaps.map(({ from, to }) => ({ from: from - dayMs, to }));
  const { from, to, findings, bringUps, pair } = answer.diagnosis;
  const begins = [
    from,
    ...findings.flatMap((f) => (f.pair === pair && f.from !== null ? [f.from] : [])),
    ...bringUps.map(({ start }) => start.earliest),
  ];
  return [{ from: Math.min(...begins) - dayMs, to }];
}

/** The lines of a file that an answer cites. */
export function citedIn(answer: Answer, file: string): readonly number[] {
  const places =
    answer.kind === 'verify'
      ? answer.verification.swaps.flatMap(({ checks }) => checks.flatMap(({ evidence }) => evidence))
      : [
          ...answer.diagnosis.causes.flatMap((c) =>
            [...c.for, ...c.against].flatMap(({ evidence }) => evidence),
          ),
          ...answer.diagnosis.findings.flatMap(({ evidence }) => evidence),
        ];
  return places.flatMap((place) => (place.file === file ? [place.line] : []));
}
