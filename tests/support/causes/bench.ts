/** What happened in a story, or what was so from then on; `value` is `null` for a happening, `half` for the pair. */
export interface Fact {
  readonly time: number;
  readonly half: string | null;
  readonly signal: string;
  readonly value: string | null;
}

/** A figure of a half from a time on. */
export interface Level {
  readonly time: number;
  readonly half: string;
  readonly gauge: 'load' | 'free-memory';
  readonly value: number;
}

export interface Module {
  readonly model: string;
  readonly serial: string;
  readonly firmware: string;
}

/** One pair from first to last; what was so when its log begins stands at `from`. */
export interface Tale {
  readonly pair: string;
  readonly halves: readonly [string, string];
  readonly from: number;
  readonly to: number;
  readonly facts: readonly Fact[];
  readonly levels: readonly Level[];
}

/** A pair on the bench: it is told what happens, and keeps when. Times in milliseconds UTC, waits in seconds. */
export interface Bench {
  readonly pair: string;
  readonly halves: readonly [string, string];
  now(): number;
  wait(seconds: number): void;
  get(half: string | null, signal: string): string;
  set(half: string | null, signal: string, value: string): void;
  happen(half: string | null, signal: string): void;
  level(half: string, gauge: Level['gauge'], value: number): void;
  levelOf(half: string, gauge: Level['gauge']): number;
  /** The half that was active last, and the other. */
  active(): string;
  standby(): string;
  /** The tale to a time, what came after it left out. */
  tale(to: number): Tale;
}

export interface Fitted {
  readonly halves: readonly [string, string];
  /** Of the half that is active when the log begins, and of the other. */
  readonly modules: readonly [Module, Module];
  readonly loads: readonly [number, number];
  readonly memory: number;
}

/** A pair that is as it should be: the first half is active, the second its ready standby. */
export function benchOf(pair: string, from: number, fitted: Fitted): Bench {
  const [active, standby] = fitted.halves;
  const facts: Fact[] = [];
  const levels: Level[] = [];
  const state = new Map<string, string>();
  let time = from;
  let last = active;
  const key = (half: string | null, signal: string): string => `${half ?? ''}/${signal}`;
  const get = (half: string | null, signal: string): string => state.get(key(half, signal)) ?? '';
  const set = (half: string | null, signal: string, value: string): void => {
    if (state.get(key(half, signal)) === value) return;
    state.set(key(half, signal), value);
    if (signal === 'role' && value === 'active' && half !== null) last = half;
    facts.push({ time, half, signal, value });
  };
  const bench: Bench = {
    pair,
    halves: fitted.halves,
    now: () => time,
    wait: (seconds) => {
      time += Math.max(1, Math.round(seconds * 1000));
    },
    get,
    set,
    happen: (half, signal) => {
      facts.push({ time, half, signal, value: null });
    },
    level: (half, gauge, value) => {
      levels.push({ time, half, gauge, value });
    },
    levelOf: (half, gauge) => levels.findLast((l) => l.half === half && l.gauge === gauge)?.value ?? 0,
    active: () => last,
    standby: () => (last === active ? standby : active),
    tale: (to) => ({
      pair,
      halves: fitted.halves,
      from,
      to,
      facts: facts.filter((f) => f.time <= to),
      levels: levels.filter((l) => l.time <= to),
    }),
  };
  begin(bench, fitted);
  return bench;
}

function begin({ set, level }: Bench, fitted: Fitted): void {
  for (const [signal, value] of atRest.pair) set(null, signal, value);
  for (const [index, half] of fitted.halves.entries()) {
    const isActive = index === 0;
    set(half, 'role', isActive ? 'active' : 'standby');
    set(half, 'light', isActive ? 'off' : 'steady');
    for (const [signal, value] of Object.entries(fitted.modules[index] ?? {})) set(half, signal, value);
    for (const [signal, value] of atRest.half) set(half, signal, value);
    level(half, 'load', fitted.loads[index] ?? 0);
    level(half, 'free-memory', fitted.memory);
  }
}

const atRest = {
  pair: [
    ['partner-present', 'yes'],
    ['partner-ready', 'yes'],
    ['configuration', 'current'],
  ],
  half: [
    ['link-a', 'up'],
    ['link-b', 'up'],
    ['links', 'straight'],
    ['supply', 'good'],
  ],
} as const;
