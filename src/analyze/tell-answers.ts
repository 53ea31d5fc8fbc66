import { holm } from '../statistics/holm.ts';
import { groupBy } from '../timeline/groups.ts';
import { type ChanceQuestion, type Finding, type PairAnswer, sayChance } from '../vocabulary.ts';

/** What the chance of one answer comes to where many questions are asked. */
interface SharedChance {
  /** Chance that any answer among all would be as clear if there were nothing to find. */
  readonly p: number;
  /** How many questions of this kind were asked of all pairs together. */
  readonly questions: number;
}

/**
 * The findings of each answer, in the order given: those that rest on no chance, then those that hold among all questions that
 * their analyzer asked of all pairs (Holm). Answers of all pairs are given together.
 */
export function tellAnswers(
  answers: readonly PairAnswer[],
  significance: number,
): readonly (readonly Finding[])[] {
  const shared = new Map(
    [...groupBy(answers, ({ analyzer }) => analyzer).values()].flatMap((own) => sharedAmong(own)),
  );
  return answers.map(({ findings, questions }) => {
    if (questions.length === 0) return findings;
    const told = questions.flatMap((question) => {
      const chance = shared.get(question);
      const holds = chance !== undefined && chance.p <= significance;
      return holds && question.finding !== null ? [withChance(question.finding, chance)] : [];
    });
    return [...findings, ...told];
  });
}

/** The questions that one analyzer asked of all pairs, each with its chance among all of them. */
function sharedAmong(answers: readonly PairAnswer[]): readonly (readonly [ChanceQuestion, SharedChance])[] {
  const asked = answers.flatMap((answer) => answer.questions);
  const adjusted = holm(asked.map(({ p }) => p));
  return asked.map((question, index) => [question, { p: adjusted[index] ?? 1, questions: asked.length }]);
}

function withChance(finding: Finding, { p, questions }: SharedChance): Finding {
  const asked = questions === 1 ? 'the only question asked' : `${questions} questions asked of all pairs`;
  return {
    ...finding,
    statement: `${finding.statement}${sayChance(p)}, ${asked}).`,
    figures: { ...finding.figures, p, questions },
  };
}
