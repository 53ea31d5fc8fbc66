import { html, nothing, type TemplateResult } from 'lit';
import { fewFiles, remarksAlike } from '../../src/report/alike-files.ts';
import { terminal } from '../../src/report/escape.ts';
import type { Finding } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import type { SiteModel } from '../protocol.ts';
import { linesButton } from './lines-button.ts';

/**
 * What there is to say of the phrasebook and of the files beside each other; of many files also what each has to say, those
 * alike together. What was left out and how far clocks are apart stand by themselves.
 */
export function remarksSection({ findings, files, failures }: SiteModel): TemplateResult | typeof nothing {
  const elsewhere = new Set([
    ...failures.map(({ where, what, fix }) => `${where}: ${what} It was left out. ${fix}`),
    ...(files.length > fewFiles
      ? []
      : files.flatMap(({ input, notices }) =>
          notices.map(({ what, fix }) => `${input.file}: ${what} ${fix}`),
        )),
  ]);
  const said = findings.filter(
    ({ pair, id, statement }) => pair === null && id !== 'clock-offset' && !elsewhere.has(statement),
  );
  if (said.length === 0) return nothing;
  return html`<section id="remarks">
    <h2>Notes</h2>
    <ul>
      ${remarksAlike(said).map(
        ({ shown, more }) =>
          html`${shown.map(remark)}${more === 0 ? nothing : html`<li>and ${more.toLocaleString('en')} more of other files like that</li>`}`,
      )}
    </ul>
  </section>`;
}

function remark({ statement, severity, evidence }: Finding): TemplateResult {
  const cite = citing(statement, evidence);
  const isOdd = severity !== 'info';
  return html`<li @mouseenter=${cite} class="long">${isOdd ? html`<span class="inconclusive">${severity}:</span> ` : nothing}${terminal(statement)} ${linesButton(statement, evidence)}</li>`;
}
