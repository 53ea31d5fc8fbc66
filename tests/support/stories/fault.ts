import type { Acts } from './acts.ts';
import type { CheckId } from './check-rules.ts';
import type { Shape } from './plan.ts';

/** One way in which the work, or a module, goes wrong; or goes well by a hair. */
export interface Fault {
  readonly id: string;
  /** The check that it breaks, maybe with others; `null`: everything holds, if only just. */
  readonly breaks: CheckId | null;
  readonly shape: Shape;
  /** The acts that are done otherwise. */
  change(good: Acts): Partial<Acts>;
}
