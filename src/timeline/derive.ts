import type { NonEmpty, Source } from '../vocabulary.ts';
import { type Derived, type HalfStory, lagOf, type Sign, unlessLogged } from './derived.ts';
import type { Stamp } from './durations.ts';
import type { TimelineRules } from './rules.ts';
import { spanEnds } from './span-ends.ts';
import type { StateStep } from './states.ts';
import { countUntil } from './tracks.ts';

/**
 * Removals, insertions, restarts and reflash ends that only states show: an identity that goes blank or is replaced, the same
 * identity that comes back, a reported firmware that changes. A blank reading cannot tell an empty place from a module that
 * starts up: an insertion lies between the removal's earliest instant and the first sign of the new module. What a log states
 * within the lag is not derived again. Source: design.md, sections 2, 4 and 5.
 */
export function deriveHappenings(story: HalfStory, rules: TimelineRules): readonly Derived[] {
  const replaced = fromIdentity(story, rules);
  return [...replaced, ...reflashes(story, replaced, rules)];
}

function fromIdentity(story: HalfStory, rules: TimelineRules): readonly Derived[] {
  const derived: Derived[] = [];
  let known: StateStep | undefined;
  let blank: StateStep | undefined;
  for (const step of story.identity) {
    if (step.value === null) {
      blank = blank ?? step;
      continue;
    }
    if (known !== undefined && step.value !== known.value)
      derived.push(...replacement(story, known, blank, step, rules));
    else if (known !== undefined && blank !== undefined)
      derived.push(...comeback(story, known, blank, step, rules));
    known = step;
    blank = undefined;
  }
  if (known !== undefined && blank !== undefined) {
    derived.push(
      ...unlessLogged(
        story,
        'removed',
        join(blank, absence(story, known, blank, blank, rules)?.no),
        known.time,
        lagOf(blank, rules),
      ),
    );
  }
  return derived;
}

function replacement(
  story: HalfStory,
  known: StateStep,
  blank: StateStep | undefined,
  arrived: StateStep,
  rules: TimelineRules,
): readonly Derived[] {
  const ended = blank ?? endOf(known, arrived);
  const away = absence(story, known, ended, arrived, rules);
  const gone = join(ended, away?.no);
  const out = story
    .logged('removed')
    .findLast((m) => m.time > known.time && m.earliest <= arrived.time && m.kind !== 'note');
  const back = away?.yes !== undefined && away.yes.time <= arrived.time ? [away.yes] : [];
  const seen = firstOf([...signsAfter(story, gone.time, arrived.time), ...back], arrived);
  const earliest = Math.max(gone.earliest, out?.earliest ?? Number.NEGATIVE_INFINITY);
  const inserted = { ...seen, earliest: Math.min(earliest, seen.time) };
  return [
    ...unlessLogged(story, 'removed', gone, known.time, lagOf(ended, rules)),
    ...unlessLogged(story, 'inserted', inserted, known.time, lagOf(arrived, rules)),
  ];
}

/** Where nothing blank was read, the old module went somewhere between its last word and the first of the new one. */
function endOf(known: StateStep, arrived: StateStep): StateStep {
  return arrived.earliest < arrived.time ? arrived : { ...arrived, earliest: known.time };
}

function signsAfter(story: HalfStory, from: number, to: number): readonly Sign[] {
  const signs = story.signs();
  return signs.slice(countUntil(signs, from), countUntil(signs, to));
}

/** The earliest sign of a module, and the line of the identity that came with it or after it. */
function firstOf(signs: readonly Sign[], arrived: StateStep): Sign {
  const first = signs.reduce<Sign>((least, sign) => (sign.time < least.time ? sign : least), arrived);
  const { time, earliest, resolution } = first;
  return first === arrived
    ? arrived
    : { time, earliest, resolution, sources: [...first.sources, ...arrived.sources] };
}

/** The same module reports again: it started again, unless a log says what happened to it. */
function comeback(
  story: HalfStory,
  known: StateStep,
  blank: StateStep,
  arrived: StateStep,
  rules: TimelineRules,
): readonly Derived[] {
  const told = (['restart', 'reflash-start', 'reflash-end', 'removed', 'inserted'] as const).some((signal) =>
    story
      .logged(signal)
      .some((m) => m.time > blank.earliest - rules.outMs && m.time <= arrived.time + rules.lagMs),
  );
  const seen = firstOf(signsAfter(story, blank.time, arrived.time), arrived);
  return told
    ? []
    : unlessLogged(story, 'restart', { ...seen, earliest: blank.earliest }, known.time, rules.lagMs);
}

function reflashes(story: HalfStory, replaced: readonly Derived[], rules: TimelineRules): readonly Derived[] {
  // A note tells the minute only: whether it comes before the first firmware read cannot be said.
  const logged = story.logged('inserted').filter((m) => m.kind !== 'note');
  const insertions = [...replaced.filter((d) => d.signal === 'inserted'), ...logged];
  const arrivedUntil = spanEnds(insertions.map(({ earliest, time }) => ({ from: earliest, to: time })));
  let known: StateStep | undefined;
  return story.firmware.flatMap((step) => {
    const before = known;
    if (step.value !== null) known = step;
    if (before === undefined || step.value === null || step.value === before.value) return [];
    // A new module arrives with its own firmware: no reflash.
    if (arrivedUntil(step.time + lagOf(step, rules)) > before.time) return [];
    return unlessLogged(story, 'reflash-end', step, before.time, rules.lagMs);
  });
}

/** The spell without a partner that goes with an identity that went blank, or changed, between two polls. */
function absence(
  story: HalfStory,
  known: StateStep,
  gone: StateStep,
  arrived: StateStep,
  rules: TimelineRules,
): { readonly no: StateStep; readonly yes: StateStep | undefined } | undefined {
  const index = story.presence.findLastIndex((s) => s.value === 'no' && !s.initial && s.time <= arrived.time);
  const no = story.presence[index];
  // Before the first word of the module that went now, it was its own arrival that was waited for.
  if (no === undefined || no.time <= known.time) return undefined;
  const isShared = story.otherIdentity.some(
    (s) => !s.initial && s.time > no.earliest && s.earliest < arrived.time,
  );
  const isOthers = story.otherRemovals.some(
    (m) => m.kind !== 'note' && m.time >= no.earliest - rules.lagMs && m.earliest <= no.time,
  );
  if (isShared || isOthers) return undefined;
  const yes = story.presence[index + 1];
  return yes === undefined || yes.time > gone.earliest ? { no, yes } : undefined;
}

/** What both show: the overlap of the bounds, else the earlier of the two. */
function join(a: StateStep, b: StateStep | undefined): Stamp & Pick<Derived, 'sources'> {
  if (b === undefined) return a;
  const earliest = Math.max(a.earliest, b.earliest);
  const time = Math.min(a.time, b.time);
  const sources: NonEmpty<Source> = [...a.sources, ...b.sources];
  const resolution = Math.max(a.resolution, b.resolution);
  const first = a.time <= b.time ? a : b;
  return earliest <= time
    ? { earliest, time, resolution, sources }
    : { earliest: first.earliest, time: first.time, resolution, sources };
}
