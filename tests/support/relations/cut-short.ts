import type { Random } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import type { Dressed, Source } from '../stories/dressing.ts';
import { joinLines, type TimedLine, timedLines } from '../stories/timed-lines.ts';
import { checkIds, truthOf } from '../stories/truth.ts';
import { isHidden } from '../swaps/is-hidden.ts';
import { clock } from './clock.ts';
import type { Changed, Told } from './relation.ts';

/** All files up to an instant soon after a step, for every step from the first removal on. */
export function cutShort(
  { files, sources, phrasebook }: Dressed,
  { story, swaps }: Told,
  random: Random,
): readonly Changed[] {
  const [first] = swaps;
  if (first === undefined) return [];
  const { firstRemoval } = truthOf(first);
  const steps = [...new Set(story.events.map((e) => e.time))].filter((time) => time >= firstRemoval);
  return steps.map((step) => {
    const cut = step + 1000 * Math.floor(1 + 120 * random());
    const kept = Object.entries(files).map(([name, text]) => ({
      name,
      lines: timedLines(text).filter(({ time }) => time === null || time <= cut),
    }));
    const ends = kept.map(({ name, lines }) =>
      endOf(
        lines,
        sources.find(({ file }) => file === name),
      ),
    );
    const end = Math.min(cut, Math.max(...ends));
    const begun = swaps.filter(({ from }) => from < end);
    // After the last swap a log may go on; an earlier one ends where the next has its begin.
    const within = ({ to }: Story, time: number): number => (to < story.to ? Math.min(to, time) : time);
    const told = begun.map((swap) => toldUntil(within(swap, cut), swap, sources, files));
    const cutSwaps = begun.map((swap) => upTo(swap, within(swap, end)));
    return {
      what: `all files up to ${clock(cut)}`,
      given: {
        files: Object.fromEntries(kept.map(({ name, lines }) => [name, joinLines(lines)])),
        phrasebook,
      },
      mayPass: new Set([...notYetBroken(cutSwaps, sources), ...notYetBroken(told, sources)]),
      mayFail: new Set([
        ...begun.flatMap((swap) => [...stillToSoak(swap, end)]),
        ...told.flatMap((swap) => pastLimit(swap, sources)),
      ]),
    };
  });
}

/** Up to when the lines of a source tell, by the true clock: what came after its last line, and before the cut, is not in it. */
function endOf(lines: readonly TimedLine[], source: Source | undefined): number {
  const last = Math.max(...lines.map(({ time }) => time ?? Number.NEGATIVE_INFINITY));
  const { kind = 'journal', aheadSeconds = 0, resolutionSeconds = 0 } = source ?? {};
  // A line of an event may stand for any instant of its stamp; a look is made at it.
  return last + 1000 * ((kind === 'poll' ? 0 : resolutionSeconds) - aheadSeconds);
}

/** A partner that is lost after one half has settled is lost in the soak, until the other half is seen to have come up. */
function stillToSoak({ events }: Story, cut: number): ReadonlySet<string> {
  const last = events.findLastIndex((e) => e.signal === 'inserted');
  const isUp = events.some((e, at) => at > last && e.signal === 'partner-ready' && e.time <= cut);
  return new Set(isUp ? [] : ['soaked', 'verdict']);
}

/**
 * What of a story is told by files that are cut at an instant: by a poll what was before its last look, which is not that
 * instant. A switchover that no look saw is none by the contract, and its checks pass.
 */
function toldUntil(cut: number, story: Story, sources: readonly Source[], files: Dressed['files']): Story {
  const until = sources.map(({ file, kind, signals, aheadSeconds, resolutionSeconds }) => {
    const looks = timedLines(files[file] ?? '').flatMap(({ time }) => time ?? []);
    const last = Math.max(...looks.filter((look) => look <= cut)) + 1000 * resolutionSeconds;
    return { signals, time: (kind === 'poll' ? last : cut) - 1000 * aheadSeconds };
  });
  const events = story.events.filter(({ signal, time }) => {
    const telling = until.filter((source) => source.signals.has(signal));
    return time <= cut && (telling.length === 0 || telling.some((source) => time <= source.time));
  });
  return { ...story, to: cut, events };
}

function upTo(story: Story, cut: number): Story {
  return { ...story, to: cut, events: story.events.filter((e) => e.time <= cut) };
}

/** Checks that nothing has broken yet in any swap, or only for so short a time that no poll left need have read it. */
function notYetBroken(swaps: readonly Story[], sources: readonly Source[]): readonly string[] {
  const checks = swaps.flatMap((story) => truthOf(story).checks);
  const isBroken = (id: string): boolean =>
    checks.some((c) => c.id === id && c.holds === false && !isHidden(c, sources));
  return checkIds.filter((id) => !isBroken(id));
}

const longestLimitMs = 900_000;

/**
 * Checks that are broken where a story ends after every limit of the last step that is told: what was watched past its limit and
 * is still bad has failed, though later work may put it right. Source: design.md, section 5.
 */
function pastLimit(story: Story, sources: readonly Source[]): readonly string[] {
  // What changes nothing that is logged nobody can know of: a reflash shows by the firmware only once it has ended.
  const isUntold = (signal: string): boolean =>
    (signal === 'reflash-start' || signal === 'restart') && sources.every((s) => !s.signals.has(signal));
  const events = story.events.filter((e) => !isUntold(e.signal));
  const last = events.findLast((e) => steps.has(e.signal));
  if (last === undefined || story.to - last.time <= longestLimitMs) return [];
  const broken = truthOf({ ...story, events }).checks.filter((c) => c.holds === false);
  return broken.length === 0 ? [] : ['verdict', ...broken.map(({ id }) => id)];
}

const steps: ReadonlySet<string> = new Set([
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
  'switchover',
]);
