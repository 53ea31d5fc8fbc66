import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { linesButton } from './lines-button.ts';

/** The log lines behind the most likely cause, at the head of the answer; nothing where no cause is. */
export function causeLines({ causes }: Diagnosis): TemplateResult | typeof nothing {
  const [first] = causes;
  const cited = first?.for.flatMap((point) => [...point.evidence]) ?? [];
  const lines = [...new Map(cited.map((l) => [`${l.line} ${l.file}`, l])).values()];
  if (first === undefined || lines.length === 0) return nothing;
  return html`<p class="second no-print">Evidence of ${terminal(first.id)}: ${linesButton(first.title, lines)}</p>`;
}
