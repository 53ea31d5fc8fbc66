import { clockOf, factsOfPair, type Told, whenOf } from './pair-facts.ts';

/** The steps of the roles, concluded ones in brackets. */
export async function roles(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).timeline.events
    .filter((e) => e.signal === 'role')
    .map((e) => {
      const value = e.value ?? 'unknown';
      return `${whenOf(e)} ${e.half} ${e.concluded ? `(${value})` : value}`;
    });
}
/** The switchovers, then the times with both halves active or neither. */
export async function exchanged(story: Told): Promise<readonly string[]> {
  const { switchovers, conflicts } = await factsOfPair(story);
  return [
    ...switchovers.map((s) => `${whenOf(s.at)} ${s.fromHalf ?? '?'}>${s.toHalf ?? '?'}`),
    ...conflicts.map((c) => `${clockOf(c.from)}-${clockOf(c.to)} ${c.kind}`),
  ];
}
