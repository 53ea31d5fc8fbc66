import { describe, expect, test } from 'vitest';
import { badSwap } from '../../../samples/stories/bad-swap.ts';
import { cleanSwap } from '../../../samples/stories/clean-swap.ts';
import { wontSync } from '../../../samples/stories/wont-sync.ts';
import { type Story, stateAt } from '../../../samples/story.ts';

const stories = [
  ['clean-swap', cleanSwap],
  ['bad-swap', badSwap],
  ['wont-sync', wontSync],
] as const;

/** Seconds from the begin of one event to another, the n-th of its kind. */
function secondsBetween(story: Story, from: string, to: string, index: number): number {
  const times = (signal: string): readonly number[] =>
    story.events.filter((e) => `${e.signal} ${e.value ?? ''}`.trim() === signal).map((e) => e.time);
  const start = times(from)[index] ?? Number.NaN;
  return ((times(to).find((time) => time >= start) ?? Number.NaN) - start) / 1000;
}

describe.each(stories)('%s', (_name, make) => {
  const story = make();
  const at = (signal: string) => story.events.filter((e) => e.signal === signal);

  test('is the same every time it is told', () => {
    expect(make()).toEqual(story);
  });
  test('goes forward in time, between its begin and its end', () => {
    const times = [story.from, ...story.events.map((e) => e.time), story.to];
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });
  test('states no value that already holds', () => {
    for (const [index, event] of story.events.entries()) {
      if (event.value === null) continue;
      const before = stateAt({ ...story, events: story.events.slice(0, index) }, event.time);
      const values: Record<string, string> =
        event.half === null ? { ...before.pair } : { ...before[event.half] };
      expect(values[event.signal]).not.toBe(event.value);
    }
  });
  test('never has two active halves', () => {
    for (const { time } of story.events) {
      const { A, B } = stateAt(story, time);
      expect([A.role, B.role]).not.toEqual(['active', 'active']);
    }
  });
  test('a removal leaves a blank half and no partner, at that instant', () => {
    for (const { time, half } of at('removed')) {
      const state = stateAt(story, time);
      expect(state[half ?? 'A']).toMatchObject({
        role: 'none',
        light: 'off',
        serial: '',
        model: '',
        firmware: '',
      });
      expect(state.pair).toMatchObject({ 'partner-present': 'no', 'partner-ready': 'no' });
    }
  });
  test('an insertion reports a standby that is not ready, at that instant', () => {
    for (const { time, half } of at('inserted')) {
      const state = stateAt(story, time);
      expect(state[half ?? 'A']).toMatchObject({ role: 'standby', light: 'flashing', firmware: '6.2.0' });
      expect(state.pair).toMatchObject({ 'partner-present': 'yes', 'partner-ready': 'no' });
    }
  });
  test('the reported firmware changes at the instant a reflash ends', () => {
    for (const { time, half } of at('reflash-end')) {
      expect(stateAt(story, time - 1)[half ?? 'A'].firmware).toBe('6.2.0');
      expect(stateAt(story, time)[half ?? 'A'].firmware).toBe('6.4.1');
    }
  });
  test('a switchover follows its command within a second and exchanges the roles', () => {
    for (const { time } of at('switchover')) {
      const command = at('switchover-command').find((e) => e.time <= time && time - e.time <= 1000);
      expect(command).toBeDefined();
      const [before, after] = [stateAt(story, time - 1), stateAt(story, time + 300)];
      expect([after.A.role, after.B.role]).toEqual([before.B.role, before.A.role]);
    }
  });
});

describe('what the stories are told for', () => {
  test('clean swap: both bring-ups steady within 300 s, then 30 minutes of rest', () => {
    const story = cleanSwap();
    // As the story gives them: 262.306 s and 271.894 s after each reflash.
    expect(secondsBetween(story, 'reflash-end', 'light steady', 0)).toBeCloseTo(262.306, 9);
    expect(secondsBetween(story, 'reflash-end', 'light steady', 1)).toBeCloseTo(271.894, 9);
    const ready = story.events.filter((e) => e.signal === 'partner-ready').at(-1);
    expect(ready?.value).toBe('yes');
    expect(story.to - (ready?.time ?? story.to)).toBeGreaterThan(30 * 60_000);
  });
  test('bad swap: never ready, never steady, firmware apart to the end, switched over all the same', () => {
    const story = badSwap();
    const inserted = story.events.findIndex((e) => e.signal === 'inserted');
    const after = story.events.slice(inserted).map((e) => `${e.signal} ${e.value}`);
    expect(after).not.toContain('partner-ready yes');
    expect(after).not.toContain('light steady');
    expect(after.filter((e) => e === 'switchover null')).toHaveLength(2);
    const end = stateAt(story, story.to);
    expect([end.A.firmware, end.B.firmware]).toEqual(['6.4.1', '6.2.0']);
  });
  test("won't sync: each attempt gives up within 5 s of the network going down, and none gets ready", () => {
    const story = wontSync();
    const failed = story.events.filter((e) => e.signal === 'sync-failed');
    expect(failed).toHaveLength(5);
    for (const { time } of failed) {
      const down = story.events
        .filter((e) => e.signal === 'link-a' && e.value === 'down' && e.time <= time)
        .at(-1);
      expect(time - (down?.time ?? 0)).toBeLessThan(5000);
    }
    expect(stateAt(story, story.to).pair['partner-ready']).toBe('no');
  });
});
