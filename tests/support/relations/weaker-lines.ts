import type { Random } from '../../../samples/random.ts';
import { withClockAhead } from '../stories/clock-ahead.ts';
import type { Dressed, Source } from '../stories/dressing.ts';
import { isStamped, joinLines, timedLines } from '../stories/timed-lines.ts';
import { checkIds, type TrueCheck, truthOf } from '../stories/truth.ts';
import { isHidden } from '../swaps/is-hidden.ts';
import { clock } from './clock.ts';
import { cutShort } from './cut-short.ts';
import type { Changed, Relation, Told } from './relation.ts';

/** What may move an answer one way only: the files say less, or one of them says it at another time. */
export const weakerLines: readonly Relation[] = [
  { id: 'source-dropped', kind: 'weaker', change: dropSource },
  { id: 'span-cut-out', kind: 'weaker', change: cutSpan },
  { id: 'poll-thinned', kind: 'weaker', change: thinPoll },
  { id: 'log-cut-short', kind: 'weaker', change: cutShort },
  {
    id: 'clock-shifted',
    kind: 'weaker',
    mayFail: true,
    change: (dressed, _told, random) => shiftOne(dressed, random),
  },
];

/** Checks whose every break some sources cannot show, by the contract: they may pass. All, where nothing is known of the swaps. */
function hiddenIn({ swaps }: Told, sources: readonly Source[]): ReadonlySet<string> {
  const checks = swaps.flatMap((story) => truthOf(story).checks);
  const broken = (id: string): readonly TrueCheck[] => checks.filter((c) => c.id === id && c.broken !== null);
  const isAllHidden = (id: string): boolean => broken(id).every((check) => isHidden(check, sources));
  return new Set(checkIds.filter((id) => (swaps.length === 0 || broken(id).length > 0) && isAllHidden(id)));
}

/**
 * Not of logs that complete each other: where one is missing, the silence of the other says that nothing happened, and nobody
 * can tell.
 */
function dropSource({ files, sources, phrasebook }: Dressed, told: Told): readonly Changed[] {
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

/**
 * Only of polls: what is cut out of a journal nobody can miss, since silence in an event log is no event. Within the span only the
 * other sources look: a break that was shorter than their spacing is not excluded, and passes.
 */
function cutSpan({ files, sources, phrasebook }: Dressed, told: Told, random: Random): readonly Changed[] {
  return sources.flatMap((source) => {
    const { file, kind, spacingSeconds } = source;
    if (kind !== 'poll') return [];
    const lines = timedLines(files[file] ?? '');
    const times = lines.flatMap(({ time }) => time ?? []);
    // Longer than three spacings: shorter spans are as well observed as the rest.
    const seconds = 4 * spacingSeconds + 1200 * random();
    const from = Math.min(...times) + (Math.max(...times) - Math.min(...times)) * random();
    const kept = lines.filter(({ time }) => time === null || time < from || time > from + 1000 * seconds);
    const what = `${file} without ${Math.round(seconds)} s from ${clock(from)}`;
    const others = sources.filter((s) => s !== source);
    const mayPass = others.some((s) => s.kind === 'poll') ? hiddenIn(told, others) : new Set<string>();
    return [{ what, given: { files: { ...files, [file]: joinLines(kept) }, phrasebook }, mayPass }];
  });
}

/** Every second to sixth look of a poll. */
function thinPoll({ files, sources, phrasebook }: Dressed, told: Told, random: Random): readonly Changed[] {
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
