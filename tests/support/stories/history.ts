import type { HalfName, Story } from '../../../samples/story.ts';

/** A value and the time it stood: from its instant on, up to the next value's or the story's end. */
export interface Spell {
  readonly value: string;
  readonly from: number;
  readonly to: number;
}

/** The spells of one signal of a half, or of the pair, in the order of time, without a break; ends at the story's end. */
export function spellsOf(
  { begin, events, from, to }: Story,
  half: HalfName | null,
  signal: string,
): readonly Spell[] {
  const states: Readonly<Record<string, string>> = { ...(half === null ? begin.pair : begin[half]) };
  const changes = events.filter((e) => e.half === half && e.signal === signal && e.value !== null);
  const steps = [
    { value: states[signal] ?? '', time: from },
    ...changes.map((e) => ({ value: e.value ?? '', time: e.time })),
  ];
  return steps.map(({ value, time }, index) => ({ value, from: time, to: steps[index + 1]?.time ?? to }));
}

/** The value that held just before an instant: what happens at that very millisecond is its effect. */
export function valueBefore(spells: readonly Spell[], time: number): string {
  return spells.findLast((s) => s.from < time)?.value ?? spells[0]?.value ?? '';
}

/** The value at an instant, what happens then included. */
export function valueAt(spells: readonly Spell[], time: number): string {
  return spells.findLast((s) => s.from <= time)?.value ?? '';
}

/** Milliseconds that a spell shares with a window. */
export function overlap(spell: Spell, from: number, to: number): number {
  return Math.max(0, Math.min(spell.to, to) - Math.max(spell.from, from));
}

/** Seconds of the longest part of a value's spells within a window. */
export function longestWithin(spells: readonly Spell[], value: string, from: number, to: number): number {
  const lengths = spells.filter((s) => s.value === value).map((s) => overlap(s, from, to));
  return Math.max(0, ...lengths) / 1000;
}
