import type { Change, Changes, Instant, Topic } from './vocabulary.ts';

/** The changes as objects, in their order: for few, or one after the other. */
export function* eachChange(changes: Changes): Generator<Change> {
  for (let place = 0; place < changes.length; place += 1) {
    const change = changeAt(changes, place);
    if (change !== undefined) yield change;
  }
}

/** The changes as objects, in their order. */
export function allChanges(changes: Changes): readonly Change[] {
  return [...eachChange(changes)];
}

/** The change at a place, counted from 0. */
export function changeAt(changes: Changes, place: number): Change | undefined {
  const topic = topicAt(changes, place);
  if (topic === undefined) return undefined;
  const { kind, subject, signal, stream } = topic;
  return {
    kind,
    time: changes.time[place] ?? Number.NaN,
    earliest: changes.earliest[place] ?? Number.NaN,
    subject,
    signal,
    value: valueAt(changes, place),
    before: beforeAt(changes, place),
    stream,
    line: changes.line[place] ?? 0,
    text: textAt(changes, place),
    count: countAt(changes, place),
  };
}

/** What the change at a place is about. */
export function topicAt({ topics, topic }: Changes, place: number): Topic | undefined {
  return topics[topic[place] ?? -1];
}

/** The value that it changed to. */
export function valueAt({ words, value }: Changes, place: number): string | null {
  return words[value[place] ?? 0] ?? null;
}

/** The value of its stream before. */
function beforeAt({ words, before }: Changes, place: number): string | null {
  return words[before[place] ?? 0] ?? null;
}

/** The row that tells of it. */
export function textAt({ text, textEnd }: Changes, place: number): string {
  return decoder.decode(text.subarray(place === 0 ? 0 : textEnd[place - 1], textEnd[place]));
}

/** How many identical lines it stands for. */
export function countAt({ counts }: Changes, place: number): number {
  return counts.get(place) ?? 1;
}

/** The same changes about other topics. */
export function withTopics(changes: Changes, other: (topic: Topic) => Topic): Changes {
  return { ...changes, topics: changes.topics.map(other) };
}

/** The same changes at other instants. */
export function withTimes(changes: Changes, other: (place: number, at: Instant) => Instant): Changes {
  const time = new Float64Array(changes.length);
  const earliest = new Float64Array(changes.length);
  for (let place = 0; place < changes.length; place += 1) {
    const printed = { time: changes.time[place] ?? 0, earliest: changes.earliest[place] ?? 0 };
    const at = other(place, printed);
    time[place] = at.time;
    earliest[place] = at.earliest;
  }
  return { ...changes, time, earliest };
}

// A mark of the byte order within a file is part of its row.
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
