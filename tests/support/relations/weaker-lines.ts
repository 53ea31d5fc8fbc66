import type { Random } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import { withClockAhead } from '../stories/clock-ahead.ts';
import type { Dressed, Source } from '../stories/dressing.ts';
import type { ToldSwap } from '../stories/swap-story.ts';
import { isStamped, joinLines, type TimedLine, timedLines } from '../stories/timed-lines.ts';
import { truthOf } from '../stories/truth.ts';
import { isHidden } from '../swaps/is-hidden.ts';
import type { Changed, Relation } from './relation.ts';

/** What may move an answer one way only: the files say less, or one of them says it at another time. */
export const weakerLines: readonly Relation[] = [
  { id: 'source-dropped', kind: 'weaker', change: dropSource },
  { id: 'span-cut-out', kind: 'weaker', change: (dressed, _told, random) => cutSpan(dressed, random) },
  { id: 'poll-thinned', kind: 'weaker', change: thinPoll },
  { id: 'log-cut-short', kind: 'weaker', change: cutShort },
  {
    id: 'clock-shifted',
    kind: 'weaker',
    mayFail: true,
    change: (dressed, _told, random) => shiftOne(dressed, random),
  },
];

/** Checks whose break some sources cannot show, by the contract: they may pass. */
function hiddenIn({ truth }: ToldSwap, sources: readonly Source[]): ReadonlySet<string> {
  return new Set(truth.checks.filter((check) => isHidden(check, sources)).map(({ id }) => id));
}

/**
 * Not of logs that complete each other: where one is missing, the silence of the other says that nothing happened, and nobody
 * can tell.
 */
function dropSource({ files, sources, phrasebook }: Dressed, told: ToldSwap): readonly Changed[] {
  if (sources.length < 2 || sources.some((s) => s.isPart === true)) return [];
  return sources.map(({ file }) => ({
    what: `without ${file}`,
    given: { files: Object.fromEntries(Object.entries(files).filter(([name]) => name !== file)), phrasebook },
    mayPass: hiddenIn(
      told,
      sources.filter((s) => s.file !== file),
    ),
  }));
}

/** Only of polls: what is cut out of a journal nobody can miss, since silence in an event log is no event. */
function cutSpan({ files, sources, phrasebook }: Dressed, random: Random): readonly Changed[] {
  return sources.flatMap(({ file, kind, spacingSeconds }) => {
    if (kind !== 'poll') return [];
    const lines = timedLines(files[file] ?? '');
    const times = lines.flatMap(({ time }) => time ?? []);
    // Longer than three spacings: shorter spans are as well observed as the rest.
    const seconds = 4 * spacingSeconds + 1200 * random();
    const from = Math.min(...times) + (Math.max(...times) - Math.min(...times)) * random();
    const kept = lines.filter(({ time }) => time === null || time < from || time > from + 1000 * seconds);
    const what = `${file} without ${Math.round(seconds)} s from ${clock(from)}`;
    return [{ what, given: { files: { ...files, [file]: joinLines(kept) }, phrasebook } }];
  });
}

/** Every second to sixth look of a poll. */
function thinPoll(
  { files, sources, phrasebook }: Dressed,
  told: ToldSwap,
  random: Random,
): readonly Changed[] {
  return sources.flatMap((source) => {
    if (source.kind !== 'poll') return [];
    const nth = 2 + Math.floor(5 * random());
    const lines = timedLines(files[source.file] ?? '');
    const looks = [...new Set(lines.flatMap(({ time }) => time ?? []))];
    const kept = new Set(looks.filter((_, index) => index % nth === 0));
    const thinned = { ...source, spacingSeconds: source.spacingSeconds * nth };
    return [
      {
        what: `${source.file}: one look of ${nth}`,
        given: {
          files: {
            ...files,
            [source.file]: joinLines(lines.filter(({ time }) => time === null || kept.has(time))),
          },
          phrasebook,
        },
        mayPass: hiddenIn(
          told,
          sources.map((s) => (s === source ? thinned : s)),
        ),
      },
    ];
  });
}

/** All files up to an instant soon after a step, for every step from the first removal on. */
function cutShort(
  { files, sources, phrasebook }: Dressed,
  { story, truth }: ToldSwap,
  random: Random,
): readonly Changed[] {
  const steps = [...new Set(story.events.map((e) => e.time))].filter((time) => time >= truth.firstRemoval);
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
    return {
      what: `all files up to ${clock(cut)}`,
      given: {
        files: Object.fromEntries(kept.map(({ name, lines }) => [name, joinLines(lines)])),
        phrasebook,
      },
      mayPass: new Set([...notBroken(upTo(story, end)), ...notBroken(toldUntil(cut, story, sources, files))]),
      mayFail: new Set([...stillToSoak(story, end), ...brokenNow(toldUntil(cut, story, sources, files))]),
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

/**
 * Checks that are broken where the log is cut, be they mended later: where nothing settles by the log, its end is the end of the
 * swap, and what is bad then fails by the contract.
 */
function brokenNow(story: Story): readonly string[] {
  const broken = truthOf(story).checks.filter((check) => check.holds === false);
  return broken.length === 0 ? [] : ['verdict', ...broken.map(({ id }) => id)];
}

/** Checks that nothing has broken. */
function notBroken(story: Story): ReadonlySet<string> {
  return new Set(
    truthOf(story)
      .checks.filter((check) => check.holds !== false)
      .map(({ id }) => id),
  );
}

/** One of several files with a clock that is 1 s to 2 h off, either way. */
function shiftOne(dressed: Dressed, random: Random): readonly Changed[] {
  const { files, sources } = dressed;
  const names = Object.keys(files);
  if (names.length < 2) return [];
  // Nothing that both halves' own logs tell of lets anyone measure how far apart their clocks are.
  const onlyVerdict = sources.some((s) => s.isPart === true);
  return names
    .filter((name) => isStamped(files[name] ?? ''))
    .map((name) => {
      const size = Math.round(7200 ** random());
      const seconds = random() < 0.5 ? size : -size;
      return {
        what: `${name} ${seconds} s ahead`,
        given: withClockAhead(dressed, name, seconds),
        onlyVerdict,
      };
    });
}

function clock(time: number): string {
  return new Date(time).toISOString().slice(11, 19);
}
