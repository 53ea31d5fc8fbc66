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
