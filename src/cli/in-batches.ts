/** So many questions at once are answered soonest. Chosen here. */
const atOnce = 64;

/** Asks of each, some at once; the answers in their order. */
export async function inBatches<T, A>(all: readonly T[], ask: (one: T) => Promise<A>): Promise<readonly A[]> {
  const answers: A[] = [];
  for (let at = 0; at < all.length; at += atOnce)
    answers.push(...(await Promise.all(all.slice(at, at + atOnce).map(ask))));
  return answers;
}
