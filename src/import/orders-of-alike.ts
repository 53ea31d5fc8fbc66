import type { OrderOfAlike } from './clock/choose-order.ts';
import type { DateOrder } from './clock/stamp.ts';

/** What the dates of files settle for those whose names differ from theirs in figures alone. */
export interface OrdersOfAlike {
  add(file: string, order: DateOrder): void;
  readonly of: OrderOfAlike;
}

/** `ro1-2026-03.csv` and `ro1-2026-04.csv` come from one program; where two of a kind differ they settle nothing. */
export function ordersOfAlike(): OrdersOfAlike {
  const found = new Map<string, { readonly order: DateOrder; readonly file: string } | null>();
  return {
    add(file, order) {
      const kind = kindOf(file);
      const known = found.get(kind);
      if (known === undefined) found.set(kind, { order, file });
      else if (known !== null && known.order !== order) found.set(kind, null);
    },
    of: (file) => found.get(kindOf(file)) ?? null,
  };
}

function kindOf(file: string): string {
  return file.replace(/\d+/g, '#');
}
