import type { Signal } from '../../vocabulary.ts';
import { conditionState } from './state-words.ts';
import { saidBeside } from './value-beside.ts';

/** A message, and what is remarked of it: before it, in brackets or before a colon; behind it, after a mark or in brackets. */
export interface Remarks {
  readonly before: readonly string[];
  readonly core: string;
  readonly behind: readonly string[];
}

/** What is longer is no sentence of a person, and has more remarks than anyone makes. Chosen here. */
const longest = 500;
const leading = /^\s*(?:\[([^\]]*)\]|\(([^)]*)\)|([a-z][\w./-]*)(?:\[\d+\])?:(?=\s))\s*/i;
const marks = /[;,()[\]]/;

/** Takes a message apart. */
export function remarksOf(message: string): Remarks {
  let rest = message.slice(0, longest);
  const before: string[] = [];
  for (let found = leading.exec(rest); found !== null; found = leading.exec(rest)) {
    before.push((found[1] ?? found[2] ?? found[3] ?? '').trim());
    rest = rest.slice(found[0].length);
  }
  const [core = '', ...behind] = rest.split(marks).map((part) => part.trim());
  return { before, core, behind: behind.filter((part) => part !== '') };
}

/** It was played, is told again, or was an error. Common practice, no source. */
const played =
  /^(?:(?:(?!self\b)\w+[\s-])?test(?:ing|ed)?|sim|simul\w*|demo|drill|exercise|training|rehearsal|dry[\s-]?run|preview|histor(?:y|ic|ical)|archived?|old|previous(?:ly)?|last|example|false(?: alarm)?|spurious|not)$/i;
/** It was not done, or no longer is. Common practice, no source. */
const undone =
  /^(?:(?:has|have|had|was|were|is|but|then|and|again|it|immediately|later|since|now)\s+)*(?:not\b|never\b|failed\b|failing\b|failure\b|unsuccessful|inhibited\b|aborted\b|refused\b|rejected\b|denied\b|blocked\b|disabled\b|cancell?ed\b|withdrawn\b|revoked\b|pending\b|requested\b|timed? ?out\b|incomplete\b|interrupted\b|with errors?\b|without success\b|undone\b|rolled back\b|(?:and |switched )?back\b|lost(?:$|\s+(?:at|after|again|since|for)\b)|0$)/i;
/** What a condition is called that does not stand, and a state that is as it should be. */
const asItShouldBe = /^(?:return(?:ed)? to )?(?:normal|clear)$/i;

/** Values that tell of trouble, or of nothing: "not synchronised" behind one of them takes nothing back. */
const bad: ReadonlySet<string | null> = new Set([
  'no',
  'down',
  'fault',
  'crossed',
  'pending',
  'off',
  'flashing',
  'none',
]);
const troubles: readonly Signal[] = ['fault', 'sync-failed'];

interface Told {
  readonly signal: Signal;
  readonly value: string | null;
}

/** Whether a remark says that what plain words tell is not so, or no longer. */
export function isTakenBack({ before, behind }: Remarks, told: readonly Told[]): boolean {
  const isBad = told.every(({ signal, value }) => bad.has(value) || troubles.includes(signal));
  const isEnded = (remark: string): boolean => {
    const state = conditionState(remark);
    return state === 'neither' || (state === 'off' && (isBad || !asItShouldBe.test(remark)));
  };
  const isDenied = (remark: string): boolean =>
    !isBad && (undone.test(remark) || (saidBeside(remark) === 'denies' && !asItShouldBe.test(remark)));
  return [...before, ...behind].some((r) => played.test(r) || isEnded(r) || isDenied(r));
}

/** Whether what is told says the contrary of itself: the same of one thing, with two values. */
export function isContrary<T extends Told & { readonly subject: object }>(told: readonly T[]): boolean {
  const values = new Map<string, string | null>();
  return told.some(({ subject, signal, value }) => {
    const key = JSON.stringify([subject, signal]);
    const known = values.get(key);
    values.set(key, value);
    return known !== undefined && known !== value;
  });
}
