import type { Trial } from './protocol.ts';
import { previewsOf, type RulePreview, usefulRules } from './rule-previews.ts';
import { Refused, type Session } from './session.ts';
import { sayTrial } from './sources-words.ts';
import type { NamedRule } from './teach-rules.ts';

type Previews = ReadonlyMap<string, RulePreview>;

/** Finds out, while a person chooses, what the rules in hand would do. */
export interface RulesLook {
  /** Looks once the person rests; `now` are the rows as they are, `null` where reading all files for a trial takes too long. */
  look(session: Session, rules: readonly NamedRule[], now: Trial['rows'] | null): void;
  previews(): Previews;
  /** What the rules of use would come to, in words; `null` while it is counted. */
  effect(): string | null;
  /** The rules of use, looked at now if need be. */
  useful(session: Session, rules: readonly NamedRule[]): Promise<readonly NamedRule[]>;
  clear(): void;
}

/** How long a person may go on before what the rules do is looked up. */
const restMs = 200;

/** `changed` is called when there is something new to show. */
export function rulesLook(changed: () => void): RulesLook {
  let previews: Previews = new Map();
  let effect: string | null = null;
  let round = 0;
  const preview = async (session: Session, rules: readonly NamedRule[]): Promise<Previews> => {
    const lessons = rules.flatMap((rule) => rule.lessons);
    return previewsOf(rules, await session.ask<'preview'>({ kind: 'preview', lessons }));
  };
  return {
    look(session, rules, now) {
      round += 1;
      const own = round;
      const isLate = (): boolean => own !== round;
      effect = null;
      setTimeout(async () => {
        if (isLate()) return;
        const found = await preview(session, rules);
        if (isLate()) return;
        previews = found;
        changed();
        const useful = usefulRules(rules, found);
        const said = await sayEffect(session, useful, now);
        if (isLate()) return;
        effect = said;
        changed();
      }, restMs);
    },
    previews: () => previews,
    effect: () => effect,
    async useful(session, rules) {
      previews = await preview(session, rules);
      changed();
      return usefulRules(rules, previews);
    },
    clear() {
      round += 1;
      previews = new Map();
      effect = null;
    },
  };
}

/** Files that are too large for a trial are not counted: each rule says how many rows it matches. */
async function sayEffect(
  session: Session,
  useful: readonly NamedRule[],
  now: Trial['rows'] | null,
): Promise<string> {
  if (useful.length === 0) return '';
  if (now === null) return 'The files are large: the rows are counted when they are read again.';
  try {
    const lessons = useful.flatMap((rule) => rule.lessons);
    const trial = await session.ask<'try'>({ kind: 'try', lessons });
    return sayTrial(useful.length, trial, now);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return `${error.refusal.what} ${error.refusal.fix}`;
  }
}
