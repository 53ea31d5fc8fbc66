type Entry = readonly [days: number, unit: string, message: string];

/** What is wrong with three of fifty pairs over ten days: no partner at the end, both halves active, a partner that comes and goes. */
const wrong: Readonly<Record<string, readonly Entry[]>> = {
  P07: [[9, 'P07', 'partner not ready']],
  P31: [
    [5, 'P31-B', 'role active'],
    [5.1, 'P31-B', 'role standby'],
  ],
  P40: [0, 1, 2, 3, 4].flatMap((n): readonly Entry[] => [
    [9.97 + n / 200, 'P40', 'partner not ready'],
    [9.971 + n / 200, 'P40', 'partner ready'],
  ]),
};

/** The journal of fifty pairs, as CSV. */
export function fiftyPairs(): string {
  const names = Array.from({ length: 50 }, (_, n) => `P${String(n + 1).padStart(2, '0')}`);
  const entries = names.flatMap((pair): readonly Entry[] => [
    [0, `${pair}-A`, 'role active'],
    [0, `${pair}-B`, 'role standby'],
    [0, pair, 'partner ready'],
    ...(wrong[pair] ?? []),
    [10, `${pair}-A`, 'link a up'],
  ]);
  const stamp = (days: number): string =>
    new Date(Date.UTC(2026, 0, 1) + Math.round(days * 86_400_000)).toISOString();
  const rows = entries
    .toSorted((a, b) => a[0] - b[0])
    .map(([days, unit, message]) => `${stamp(days)},${unit},${message}\n`);
  return `time,unit,message\n${rows.join('')}`;
}
