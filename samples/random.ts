/** Numbers from 0 (inclusive) to 1, the same for the same seed. */
export type Random = () => number;

/**
 * A small generator for demo data: a 32-bit counter, mixed by multiplication and shifts. The constants are those of the
 * finaliser of MurmurHash3 (public domain, 2011) and of the golden ratio.
 */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4_294_967_296;
  };
}
