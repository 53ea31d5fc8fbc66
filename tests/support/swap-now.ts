import { swapsNow } from '../../src/pipeline.ts';
import type { Condition, Job, SwapNow } from '../../src/vocabulary.ts';
import { cleanJournal } from './clean-swap.ts';
import type { Told } from './pair-facts.ts';
import { analyseTexts, journalText } from './read-text.ts';

export type Plan = NonNullable<Job['plan']>[string];

/** What a pair at rest reports, all that a removal asks for: half A active, half B standby. */
export const atRest: readonly string[] = [
  ...cleanJournal.filter((line) => line.startsWith('08:40:00')),
  '08:40:00  RO1 B  light steady',
];

/** The work of the clean journal, from the removal of half B on. */
export const cleanWork: readonly string[] = cleanJournal.filter((line) => !line.startsWith('08:40:00'));

/** How RO1 stands at the end of some lines, or files; throws if it is not shown. */
export async function nowOf(told: Told, plan?: Plan): Promise<SwapNow> {
  const [now] = await shown(told, 'RO1', plan);
  if (now === undefined) throw new Error('Nothing is shown.');
  return now;
}

/** The pairs that are shown, with RO1 named or none. */
export async function shown(told: Told, pair: string | null, plan?: Plan): Promise<readonly SwapNow[]> {
  const files = isLines(told) ? { 'ro1.log': journalText([...told].sort().join('\n')) } : told;
  const job = plan === undefined ? null : { plan: { RO1: plan } };
  return swapsNow(await analyseTexts(files), pair, job);
}

function isLines(told: Told): told is readonly string[] {
  return Array.isArray(told);
}

/** One condition of the hold point: how it stands, and what it says; throws if it is not asked. */
export function conditionIn({ holdPoint }: SwapNow, id: string): Condition {
  const found = holdPoint.conditions.find((c) => c.id === id);
  if (found === undefined) throw new Error(`${holdPoint.id} does not ask ${id}.`);
  return found;
}

/** The lines without those that hold a text, and with others. */
export function but(
  lines: readonly string[],
  without: string,
  ...plus: readonly string[]
): readonly string[] {
  const kept = lines.filter((line) => without === '' || !line.includes(without));
  if (without !== '' && kept.length === lines.length) throw new Error(`No line holds ${without}.`);
  return [...kept, ...plus];
}
