import type { Changes, Signal, Stream, Subject } from '../vocabulary.ts';

/** For each change of a file the last instant at which its stream is known to have read its value; for entries and notes its own. */
export function readUntils(changes: Changes, streams: readonly Stream[]): Float64Array {
  const { topics, topic, time, earliest } = changes;
  const untils = Float64Array.from(time);
  const tracks = tracksOf(topics);
  const open = new Map<number, number>();
  for (const [place, of] of topic.entries()) {
    if (topics[of]?.kind !== 'reading') continue;
    const track = tracks[of] ?? -1;
    const before = open.get(track);
    if (before !== undefined) untils[before] = Math.max(time[before] ?? 0, earliest[place] ?? 0);
    open.set(track, place);
  }
  const ends = new Map(
    streams.flatMap(({ reads }, stream) => reads.map((read) => [readKey(stream, read), read.to] as const)),
  );
  for (const place of open.values()) {
    const of = topics[topic[place] ?? -1];
    const end =
      of === undefined ? undefined : (ends.get(readKey(of.stream, of)) ?? streams[of.stream]?.last.time);
    untils[place] = end ?? time[place] ?? 0;
  }
  return untils;
}

/** Numbers topics so that those of one signal of one half or role in one stream have the same, whatever else they differ in. */
function tracksOf(topics: Changes['topics']): readonly number[] {
  const numbers = new Map<string, number>();
  return topics.map((topic) => {
    const key = readKey(topic.stream, topic);
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
}

function readKey(
  stream: number,
  { subject, signal }: { readonly subject: Subject; readonly signal: Signal },
): string {
  return `${stream}\n${subject.half ?? ''}\n${subject.role ?? ''}\n${signal}`;
}
