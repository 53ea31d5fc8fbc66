import type { FleetInBrief } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { sayObserved, sayRate } from './fleet-words.ts';
import { sayChanged, sayCompared, sayDifference, sayRatio, struckWords } from './loss-words.ts';
import { wrap } from './verify-text.ts';

/** Losses by group as `fleet` prints them: a row for each group, and every two of them compared. Ends with an empty line. */
export function lossGroupLines({ by, lossGroups, lossRatios }: FleetInBrief): readonly string[] {
  if (lossGroups.length === 0) return [];
  const shown = [...lossRatios].sort((a, b) => Number(b.differs) - Number(a.differs)).slice(0, mostRatios);
  return [
    `Losses by ${by}`,
    row('group', 'pairs', 'losses', 'bouts', 'bouts per year, 95 % limits', 'observed'),
    ...lossGroups.flatMap((g) => [
      row(
        terminal(g.group),
        String(g.pairs),
        String(g.losses),
        String(g.bouts),
        sayRate(g),
        sayObserved(g.observedSeconds),
      ),
      ...(g.struckTogether ? [`    no limits: ${struckWords}`] : []),
      ...(g.change === null ? [] : wrap(`rate changed: ${sayChanged(g.change)}`, '    ', '      ')),
    ]),
    ...shown.flatMap((r) =>
      wrap(
        terminal(`${r.group} over ${r.other}, ${sayCompared(r)}: ${sayRatio(r)}, ${sayDifference(r)}`),
        '  ',
        '    ',
      ),
    ),
    ...(shown.length < lossRatios.length
      ? [`  ${lossRatios.length - shown.length} more comparisons: --json has all.`]
      : []),
    '',
  ];
}

/** Of very many comparisons those that differ come first; so many are printed. */
const mostRatios = 12;

const nameWidth = 14;

/** A name that is too long for its column stands above its figures. */
function row(
  name: string,
  pairs: string,
  losses: string,
  bouts: string,
  rate: string,
  observed: string,
): string {
  const figures = `${pairs.padStart(5)} ${losses.padStart(6)} ${bouts.padStart(6)}  ${rate.padEnd(28)} ${observed.padStart(9)}`;
  const isLong = name.length > nameWidth;
  const above = isLong ? `${wrap(name, '  ', '  ').join('\n')}\n` : '';
  return `${above}  ${(isLong ? '' : name).padEnd(nameWidth)} ${figures}`;
}
