import type { GaugeBin, HalfGauge, ImportedFile } from '../vocabulary.ts';
import { keyOf } from './groups.ts';
import { activeHalf, otherHalf, type Roles } from './roles.ts';

/** The gauges of a pair by half; those of a role follow the half that held it in each bin. */
export function gaugesOf(
  pair: string,
  files: readonly ImportedFile[],
  roles: Roles,
  halves: readonly string[],
): readonly HalfGauge[] {
  const series = files.flatMap((f) => f.gauges).filter((g) => g.subject.pair === pair);
  const byHalf = new Map<string, Pick<HalfGauge, 'half' | 'gauge'> & { readonly bins: GaugeBin[] }>();
  for (const { subject, gauge, bins } of series) {
    for (const bin of bins) {
      const active = activeHalf(roles, bin.from);
      const ofRole = active === null || subject.role === 'active' ? active : otherHalf(halves, active);
      const half = subject.half ?? (subject.role === null ? null : ofRole);
      const key = keyOf(half, gauge);
      const known = byHalf.get(key);
      if (known === undefined) byHalf.set(key, { half, gauge, bins: [bin] });
      else known.bins.push(bin);
    }
  }
  return [...byHalf.values()].map((g) => ({ ...g, bins: [...g.bins].sort((a, b) => a.from - b.from) }));
}
