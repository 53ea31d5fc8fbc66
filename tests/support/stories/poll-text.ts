import { readingsCsv, snapshotsByHalf } from '../../../samples/exports.ts';
import { type PollStyle, pollsOf } from '../../../samples/polls.ts';
import { formatStamp } from '../../../samples/stamps.ts';
import type { State, Story } from '../../../samples/story.ts';

export type Layout = 'readings' | 'snapshots';

const writers = { readings: readingsCsv, snapshots: snapshotsByHalf };

/**
 * What the exports of samples write of a story, many times as fast: a state is written once and then repeated under each
 * poll's stamp, since most polls see what the one before saw. Takes stamps `iso` and `iso-offset` in UTC.
 */
export function pollText(story: Story, layout: Layout, style: PollStyle): string {
  const written = new Map<State, readonly string[]>();
  const own = { ...style, phaseSeconds: 0, jitterSeconds: 0 };
  const linesOf = (state: State): readonly string[] => {
    const text = writers[layout]({ ...story, to: story.from, begin: state, events: [] }, own);
    return text.trimEnd().split('\n');
  };
  const stampLength = formatStamp(story.from, style.stamp).length;
  const [header = ''] = linesOf(story.begin);
  const rows: string[] = [header];
  for (const { time, state } of pollsOf(story, style)) {
    let tails = written.get(state);
    if (tails === undefined) {
      tails = linesOf(state)
        .slice(1)
        .map((line) => line.slice(stampLength));
      written.set(state, tails);
    }
    const stamp = stampOf(time, style);
    for (const tail of tails) rows.push(stamp + tail);
  }
  return `${rows.join('\n')}\n`;
}

function stampOf(time: number, { stamp: { form, decimals, aheadSeconds = 0 } }: PollStyle): string {
  const iso = new Date(time + Math.round(aheadSeconds * 1000))
    .toISOString()
    .slice(0, decimals === 3 ? 23 : 19);
  return form === 'iso' ? iso.replace('T', ' ') : `${iso}+00:00`;
}
