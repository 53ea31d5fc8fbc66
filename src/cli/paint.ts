import type { Output } from './streams.ts';

/** Colours a text for a terminal: the verdict bold, what is abnormal in rust or ochre. */
export type Paint = (text: string, as: 'verdict' | 'critical' | 'warning') => string;

const codes = { verdict: '1', critical: '38;5;130', warning: '38;5;136' } as const;

/** No colour where the output is no terminal, or where the user wants none (NO_COLOR). */
export function painterFor(output: Output): Paint {
  if (!output.isTerminal) return (text) => text;
  return (text, as) => `\u001b[${codes[as]}m${text}\u001b[0m`;
}
