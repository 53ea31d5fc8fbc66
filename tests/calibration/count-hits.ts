/** How often something happens in so many tries. */
export function countHits(cases: number, happens: () => boolean): number {
  let hits = 0;
  for (let index = 0; index < cases; index += 1) if (happens()) hits += 1;
  return hits;
}
