import type { Random } from '../../../samples/random.ts';
import { atRest, type HalfName, type Module, type State } from '../../../samples/story.ts';

/** What is drawn of a swap before it is told. */
export interface Plan {
  readonly pair: string;
  /** When the log begins, in milliseconds UTC. */
  readonly from: number;
  /** The half that is active when the log begins. */
  readonly active: HalfName;
  /** The halves to replace, in the order of the work. */
  readonly halves: readonly [HalfName, ...HalfName[]];
  /** One half alone: roles are exchanged after its bring-up. Of both halves they always are, between the two. */
  readonly switchesOver: boolean;
  /** New modules arrive with other firmware and are reflashed. */
  readonly reflashes: boolean;
  /** The roles were exchanged there and back, by command, well before the work. */
  readonly exercised: boolean;
  readonly old: Readonly<Record<HalfName, Module>>;
  readonly fresh: Readonly<Record<HalfName, Module>>;
}

/** What a fault needs of a plan; chance decides what it leaves open. */
export interface Shape {
  readonly both?: boolean;
  readonly switchesOver?: boolean;
  readonly reflashes?: boolean;
  readonly modelsDiffer?: boolean;
}

/** The firmware that the pairs run, and that of new modules that are reflashed. */
const running = '6.4.1';
const shelved = '6.2.0';
const models = ['Tern-2', 'Tern-4'] as const;

/** A plan within a shape, drawn by chance. */
export function drawPlan(random: Random, shape: Shape): Plan {
  const isTrue = (wanted: boolean | undefined, share: number): boolean => {
    const drawn = random() < share;
    return wanted ?? drawn;
  };
  const both = isTrue(shape.both, 0.4);
  const switchesOver = isTrue(shape.switchesOver, 0.4);
  const reflashes = isTrue(shape.reflashes, 0.5);
  const exercised = isTrue(undefined, 0.3);
  const active = random() < 0.5 ? 'A' : 'B';
  const standby = otherThan(active);
  const [kept, left] = [
    models[Math.floor(2 * random())] ?? 'Tern-2',
    models[Math.floor(2 * random())] ?? 'Tern-4',
  ];
  const number = 10_000 + Math.floor(80_000 * random());
  const module = (model: string, offset: number, firmware: string): Module => ({
    model,
    serial: `T${model.slice(-1)}-${number + offset}`,
    firmware,
  });
  const oldModel = (half: HalfName): string => (both ? 'Tern-2' : half === active ? kept : left);
  // A new module is to match what stays: of both halves the other new one.
  const freshModel = (half: HalfName): string => (both ? 'Tern-4' : oldModel(otherThan(half)));
  const arriving = (half: HalfName, offset: number): Module => {
    const wanted = freshModel(half);
    const model = shape.modelsDiffer === true ? (models.find((m) => m !== wanted) ?? wanted) : wanted;
    return module(model, offset, reflashes ? shelved : running);
  };
  return {
    pair: `RO${1 + Math.floor(4 * random())}`,
    from: Date.UTC(2026, 2, 14, 8) + Math.floor(200 * 86_400_000 * random()),
    active,
    halves: both ? [standby, active] : [standby],
    switchesOver,
    reflashes,
    exercised,
    old: { A: module(oldModel('A'), 0, running), B: module(oldModel('B'), 1, running) },
    fresh: { A: arriving('A', 2), B: arriving('B', 3) },
  };
}

export function otherThan(half: HalfName): HalfName {
  return half === 'A' ? 'B' : 'A';
}

/** The pair of a plan before the work: one half active, the other ready. */
export function beginOf({ old, active }: Plan): State {
  const rest = atRest(old[active], old[otherThan(active)]);
  return active === 'A' ? rest : { A: rest.B, B: rest.A, pair: rest.pair };
}
