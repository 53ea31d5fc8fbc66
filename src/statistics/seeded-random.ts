const [multiplier, modulus] = [48_271, 2_147_483_647];

/**
 * Whole numbers from 1 to 2147483646, the same for the same `seed` (a whole number) on every computer.
 * Source: Park, Miller and Stockmeyer, Communications of the ACM 36 (1993), the multiplier 48271 (from memory).
 */
export function seededRandom(seed: number): () => number {
  // 0 would stay 0 for ever, so seeds lie from 1 on.
  let state = ((((Math.trunc(seed) - 1) % (modulus - 1)) + (modulus - 1)) % (modulus - 1)) + 1;
  return () => {
    state = (state * multiplier) % modulus;
    return state;
  };
}

/** An index from 0 to `count - 1` from one number of `seededRandom`. */
export function indexFrom(random: number, count: number): number {
  return Math.floor(((random - 1) / (modulus - 1)) * count);
}

/** Puts values in an order drawn by `next`, all orders alike. Source: Fisher and Yates, as in Knuth, The Art of Computer Programming 2, algorithm 3.4.2 P (from memory). */
export function shuffle(values: Float64Array, next: () => number): void {
  for (let index = values.length - 1; index > 0; index -= 1) {
    const other = indexFrom(next(), index + 1);
    const value = values[index] ?? 0;
    values[index] = values[other] ?? 0;
    values[other] = value;
  }
}
