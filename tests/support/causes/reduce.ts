import type { Fact, Tale } from './bench.ts';

/** A tale of which a site tells less: what it never logs, and what was before its log begins. */

/** Without some signals. */
export function without(tale: Tale, signals: ReadonlySet<string>): Tale {
  return { ...tale, facts: tale.facts.filter((f) => !signals.has(f.signal)) };
}

/** From a later time on: what was so then is what its log begins with. */
export function beginLate(tale: Tale, time: number): Tale {
  const from = Math.max(tale.from, time);
  const states = new Map<string, Fact>();
  for (const fact of tale.facts)
    if (fact.time <= from && fact.value !== null)
      states.set(`${fact.half}/${fact.signal}`, { ...fact, time: from });
  const later = tale.facts.filter((f) => f.time > from);
  return { ...tale, from, facts: [...states.values(), ...later] };
}
