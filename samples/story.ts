/**
 * A story is the exact truth about one invented pair: what it was at the begin, and everything that happened, to the
 * millisecond. The exports show it as polls, journals, logs and notes would.
 */

export interface Half {
  role: 'active' | 'standby' | 'none';
  model: string;
  serial: string;
  firmware: string;
  light: 'steady' | 'flashing' | 'off';
  'link-a': 'up' | 'down';
  'link-b': 'up' | 'down';
  links: 'straight' | 'crossed';
  supply: 'good' | 'fault';
}

export interface Pair {
  'partner-present': 'yes' | 'no';
  'partner-ready': 'yes' | 'no';
  configuration: 'current' | 'pending';
}

export type HalfName = 'A' | 'B';

export interface State {
  readonly A: Half;
  readonly B: Half;
  readonly pair: Pair;
}

/** One change or happening. A happening has no value. */
export interface StoryEvent {
  readonly time: number;
  readonly half: HalfName | null;
  readonly signal: string;
  readonly value: string | null;
}

export interface Story {
  readonly pair: string;
  readonly from: number;
  readonly to: number;
  readonly begin: State;
  readonly events: readonly StoryEvent[];
}

export interface Module {
  readonly model: string;
  readonly serial: string;
  readonly firmware: string;
}

/** A pair at rest: A active, B ready. */
export function atRest(a: Module, b: Module): State {
  const half = (module: Module, role: 'active' | 'standby'): Half => ({
    ...module,
    role,
    light: role === 'active' ? 'off' : 'steady',
    'link-a': 'up',
    'link-b': 'up',
    links: 'straight',
    supply: 'good',
  });
  return {
    A: half(a, 'active'),
    B: half(b, 'standby'),
    pair: { 'partner-present': 'yes', 'partner-ready': 'yes', configuration: 'current' },
  };
}

/** Writes a story step by step; every step keeps to what such a pair can do. */
export interface Teller {
  /** The exact instant, in milliseconds UTC, that the story has reached. */
  now(): number;
  wait(seconds: number): void;
  happen(half: HalfName | null, signal: string): void;
  set(half: HalfName | null, signal: string, value: string): void;
  /** Pulls the module of a half: the pair loses its partner at that instant. */
  remove(half: HalfName): void;
  insert(half: HalfName, module: Module): void;
  /** Reflashes a standby; the firmware it reports changes at the end. */
  reflash(half: HalfName, firmware: string, seconds: number): void;
  /** Synchronises a standby: ready after some seconds, its light steady a little later. */
  synchronise(half: HalfName, readySeconds: number, steadySeconds: number): void;
  switchOver(commanded: boolean): void;
  state(): State;
  story(): Story;
}

// biome-ignore lint/complexity/noExcessiveLinesPerFunction: small steps over one state that none of them may leave.
export function tell(pair: string, from: number, begin: State): Teller {
  let time = from;
  let current = structuredClone(begin);
  const events: StoryEvent[] = [];
  const happen = (half: HalfName | null, signal: string, value: string | null = null): void => {
    events.push({ time, half, signal, value });
  };
  const set = (half: HalfName | null, signal: string, value: string): void => {
    const target: Record<string, string> = half === null ? { ...current.pair } : { ...current[half] };
    if (target[signal] === value) return;
    current = apply(current, { time, half, signal, value });
    happen(half, signal, value);
  };
  return {
    now: () => time,
    wait(seconds) {
      time += Math.round(seconds * 1000);
    },
    happen: (half, signal) => happen(half, signal),
    set,
    remove(half) {
      happen(half, 'removed');
      set(half, 'role', 'none');
      set(null, 'partner-present', 'no');
      set(null, 'partner-ready', 'no');
      for (const signal of ['serial', 'model', 'firmware']) set(half, signal, '');
      set(half, 'link-a', 'down');
      set(half, 'link-b', 'down');
      set(half, 'light', 'off');
    },
    insert(half, module) {
      happen(half, 'inserted');
      set(null, 'partner-present', 'yes');
      for (const signal of ['serial', 'model', 'firmware'] as const) set(half, signal, module[signal]);
      set(half, 'link-a', 'up');
      set(half, 'link-b', 'up');
      set(half, 'role', 'standby');
      set(half, 'light', 'flashing');
    },
    reflash(half, firmware, seconds) {
      happen(half, 'reflash-start');
      set(null, 'partner-ready', 'no');
      set(half, 'light', 'flashing');
      time += Math.round(seconds * 1000);
      happen(half, 'reflash-end');
      set(half, 'firmware', firmware);
    },
    synchronise(half, readySeconds, steadySeconds) {
      const start = time;
      time = start + Math.round(readySeconds * 400);
      happen(half, 'sync-start');
      const steps: [number, () => void][] = [
        [readySeconds, () => set(null, 'partner-ready', 'yes')],
        [steadySeconds, () => set(half, 'light', 'steady')],
      ];
      for (const [seconds, step] of steps.sort((a, b) => a[0] - b[0])) {
        time = start + Math.round(seconds * 1000);
        step();
      }
    },
    switchOver(commanded) {
      const [old, next]: [HalfName, HalfName] = current.A.role === 'active' ? ['A', 'B'] : ['B', 'A'];
      if (commanded) {
        happen(null, 'switchover-command');
        time += 640;
      }
      happen(null, 'switchover');
      set(old, 'role', 'standby');
      time += 120;
      set(next, 'role', 'active');
      set(next, 'light', 'off');
      if (current.pair['partner-ready'] === 'yes') set(old, 'light', 'steady');
    },
    state: () => current,
    story: () => ({ pair, from, to: time, begin, events }),
  };
}

/** The state after one event; a happening changes nothing by itself. */
export function apply(state: State, event: StoryEvent): State {
  if (event.value === null) return state;
  if (event.half === null) return { ...state, pair: { ...state.pair, [event.signal]: event.value } };
  return { ...state, [event.half]: { ...state[event.half], [event.signal]: event.value } };
}

/** What a pair is at an instant, everything that happens then included. */
export function stateAt(story: Story, time: number): State {
  return story.events.filter((e) => e.time <= time).reduce(apply, story.begin);
}

/** Waits until an instant, in milliseconds UTC. */
export function until(teller: Teller, time: number): void {
  teller.wait((time - teller.now()) / 1000);
}
