/** `u' V^- u` and the rank of V. */
export interface QuadraticForm {
  readonly value: number;
  readonly rank: number;
}

/**
 * `u' V^- u` for a covariance matrix V and a deviation `u` that it allows; groups that cannot vary are left out. By
 * elimination on the largest pivot, as Cholesky's factorisation does it.
 */
export function quadraticForm(
  deviation: readonly number[],
  covariance: readonly (readonly number[])[],
): QuadraticForm {
  const rest = covariance.map((row) => [...row]);
  const u = [...deviation];
  const largest = Math.max(0, ...rest.map((row, index) => row[index] ?? 0));
  const open = new Set(u.keys());
  let value = 0;
  let rank = 0;
  for (;;) {
    const pivot = [...open].reduce(
      (best, index) => (at(rest, index, index) > at(rest, best, best) ? index : best),
      -1,
    );
    const variance = at(rest, pivot, pivot);
    if (variance <= largest * 1e-10) return { value, rank };
    open.delete(pivot);
    value += (u[pivot] ?? 0) ** 2 / variance;
    rank += 1;
    for (const row of open) eliminate(rest, u, row, pivot, open);
  }
}

function at(matrix: readonly (readonly number[])[], row: number, column: number): number {
  return matrix[row]?.[column] ?? 0;
}

function eliminate(
  rest: number[][],
  u: number[],
  row: number,
  pivot: number,
  open: ReadonlySet<number>,
): void {
  const factor = at(rest, row, pivot) / at(rest, pivot, pivot);
  u[row] = (u[row] ?? 0) - factor * (u[pivot] ?? 0);
  const target = rest[row] ?? [];
  for (const column of open) target[column] = at(rest, row, column) - factor * at(rest, pivot, column);
}
