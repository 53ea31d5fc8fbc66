import type { CheckStatus, Verdict } from '../../../src/vocabulary.ts';
import type { Verified } from '../verify-files.ts';
import { asItIs, reduce } from './reduce.ts';
import type { Changed, Relation } from './relation.ts';

/** One thing that two answers may not say differently. */
export interface Difference {
  /** A check, `verdict`, or what else of the answer it is. */
  readonly about: string;
  readonly before: string;
  readonly after: string;
}

/** What a change broke: empty where the relation holds. Of a pair alone, whatever other pairs the files tell of. */
export function differences(
  { kind, mayFail = false }: Relation,
  pair: string,
  before: Verified,
  after: Verified,
  { view = asItIs, mayPass = new Set(), mayFail: mayFailHere = new Set(), onlyVerdict = false }: Changed,
): readonly Difference[] {
  if (kind === 'weaker') {
    const found = strengthened(
      worst(before, pair),
      worst(after, pair),
      mayPass,
      (about) => mayFail || mayFailHere.has(about),
    );
    return found.filter(({ about }) => about === 'verdict' || !onlyVerdict);
  }
  const [one, other] = [reduce(before, pair, asItIs), reduce(after, pair, view)];
  return [...new Set([...one.keys(), ...other.keys()])].flatMap((key) => {
    const [was, is] = [one.get(key) ?? 'nothing', other.get(key) ?? 'nothing'];
    return was === is ? [] : [{ about: key, before: was, after: is }];
  });
}

type Said = ReadonlyMap<string, CheckStatus | Verdict>;

/** What is said of a pair, check by check: of several swaps the worst. Empty where no swap was found. */
function worst({ swaps }: Verified, pair: string): Said {
  const said = new Map<string, CheckStatus | Verdict>();
  const rank = ['fail', 'not-verified', 'inconclusive', 'not-observed', 'pass', 'verified'];
  for (const { verdict, checks } of swaps.filter((s) => s.pair === pair))
    for (const [about, status] of [
      ['verdict', verdict] as const,
      ...checks.map((c) => [c.id, c.status] as const),
    ]) {
      const known = said.get(about);
      if (known === undefined || rank.indexOf(status) < rank.indexOf(known)) said.set(about, status);
    }
  return said;
}

const good: ReadonlySet<string> = new Set(['pass', 'verified']);
const bad: ReadonlySet<string> = new Set(['fail', 'not-verified']);

function strengthened(
  before: Said,
  after: Said,
  mayPass: ReadonlySet<string>,
  mayFail: (about: string) => boolean,
): readonly Difference[] {
  // Where all that failed may pass, or is said not to be observed any more, so may the swap: the verdict names what was not observed.
  const failed = [...before].filter(([about, status]) => about !== 'verdict' && status === 'fail');
  const isHealed = failed.every(([about]) => mayPass.has(about) || after.get(about) === 'not-observed');
  return [...before].flatMap(([about, was]) => {
    const is = after.get(about) ?? 'nothing';
    const heals = bad.has(was) && good.has(is) && !(about === 'verdict' ? isHealed : mayPass.has(about));
    const fails = good.has(was) && bad.has(is) && !mayFail(about);
    return heals || fails ? [{ about, before: was, after: is }] : [];
  });
}
