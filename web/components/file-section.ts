import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayDuration } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import type { FileModel } from '../protocol.ts';
import { linesButton } from './lines-button.ts';

const mostUnits = 24;

/** How one file was understood: layout, encoding, zone, units, the counts of its rows, what was odd. */
export function fileSection(file: FileModel): TemplateResult {
  return html`<section class="file" id="files">
    <h2 class="long">${terminal(file.input.file)}</h2>
    ${fileBody(file)}
  </section>`;
}

/** The same without its name. */
export function fileBody(file: FileModel): TemplateResult {
  const { input, reasons, notices, units, columns, parameters } = file;
  const { rows } = input;
  const counts: readonly (readonly [string, number])[] = [
    ['rows', rows.read],
    ['used', rows.used],
    ['unchanged', rows.unchanged],
    ['ignored', rows.ignored],
    ['not recognised', rows.unmatched],
    ['rejected', rows.rejected],
  ];
  return html`<p>${reasons.map((reason) => html`${terminal(reason)} `)}</p>
    <div class="scroll"><table>
      <thead><tr>${counts.map(([words]) => html`<th scope="col" class="number">${words}</th>`)}</tr></thead>
      <tbody><tr>${counts.map(([words, count]) => html`<td class=${isOdd(words, count) ? 'number inconclusive' : 'number'}>${count.toLocaleString('en')}</td>`)}</tr></tbody>
    </table></div>
    ${becameLine('Columns', columns)}
    ${becameLine('Parameters', parameters)}
    ${unitsLine(units)}
    ${unobservedLine(file)}
    ${
      notices.length === 0
        ? nothing
        : html`<ul>
          ${notices.map((n) => {
            const cite = citing(n.what, n.lines);
            return html`<li @mouseenter=${cite}>${terminal(n.what)} ${terminal(n.fix)} ${linesButton(n.what, n.lines)}</li>`;
          })}
        </ul>`
    }
    <p class="second">${input.bytes.toLocaleString('en')} bytes, <code>SHA-256 ${input.sha256}</code></p>
    ${input.container === undefined ? nothing : html`<p class="second">in ${terminal(input.container.file)}, <code>SHA-256 ${input.container.sha256}</code></p>`}`;
}

function isOdd(words: string, count: number): boolean {
  return count > 0 && (words === 'not recognised' || words === 'rejected');
}

function becameLine(title: string, all: FileModel['columns']): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const known = all.filter((b) => b.meaning !== null).map((b) => `${terminal(b.name)}: ${b.meaning}`);
  const unused = all
    .filter((b) => b.meaning === null)
    .map((b) => terminal(b.name === '' ? '(no name)' : b.name));
  return html`<p class="long">${known.length === 0 ? nothing : `${title}: ${listed(known)}. `}${unused.length === 0 ? nothing : `${title} not used: ${listed(unused)}.`}</p>`;
}

function listed(all: readonly string[]): string {
  const more = all.length > mostUnits ? `, and ${all.length - mostUnits} more` : '';
  return `${all.slice(0, mostUnits).join('; ')}${more}`;
}

function unobservedLine({ unobserved }: FileModel): TemplateResult | typeof nothing {
  const longest = Math.max(...unobserved.map(({ from, to }) => to - from));
  if (unobserved.length === 0) return nothing;
  const spans = unobserved.length === 1 ? 'One span is' : `${unobserved.length} spans are`;
  return html`<p>${spans} unobserved, the longest ${sayDuration(longest / 1000)}.</p>`;
}

function unitsLine(units: FileModel['units']): TemplateResult {
  if (units.length === 0) return html`<p>It names no unit.</p>`;
  const said = units
    .slice(0, mostUnits)
    .map(({ unit, subject }) => `${terminal(unit)}: ${saySubject(subject)}`);
  const more = units.length > mostUnits ? `, and ${units.length - mostUnits} more` : '';
  return html`<p class="long">Units: ${said.join('; ')}${more}.</p>`;
}

function saySubject({ pair, half, role }: FileModel['units'][number]['subject']): string {
  if (pair === '') return 'no pair that is used';
  if (half !== null) return `half ${terminal(half)} of ${terminal(pair)}`;
  return role === null ? `pair ${terminal(pair)}` : `the ${role} half of ${terminal(pair)}`;
}
