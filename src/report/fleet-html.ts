import type { Fleet, PairReview } from '../vocabulary.ts';
import { html } from './escape.ts';
import { figure } from './figure.ts';
import { type FleetSection, howComputedTitle } from './fleet-section.ts';
import { fleetSections } from './fleet-sections.ts';
import { fleetSentences } from './fleet-sentences.ts';
import { htmlDocument } from './html-document.ts';
import { section } from './html-section.ts';
import type { ReportOptions } from './report-options.ts';
import { classOf, onPaper, type ShownCell, type ShownTable } from './shown-table.ts';
import { cautionsSection, inputsSection, notKnownLines } from './verify-html-annex.ts';
import { sayCount, sayInstant } from './words.ts';

/**
 * The review of a fleet: one self-contained HTML file that needs no script and no network and prints on A4 and Letter.
 * Same fleet, same bytes.
 */
export async function fleetHtml(fleet: Fleet, options: ReportOptions): Promise<string> {
  const sections = [answerSection(fleet, options)];
  for (const one of fleetSections(fleet, options.zone)) sections.push(await questionSection(one, options));
  sections.push(lossesSection(fleet), cautionsSection(), inputsSection(fleet));
  return htmlDocument('Fleet review', sections, options.version);
}

function answerSection(fleet: Fleet, { zone }: ReportOptions): string {
  const [first, ...rest] = fleetSentences(fleet);
  const times = fleet.inputs.flatMap(({ from, to }) => (from === null || to === null ? [] : [{ from, to }]));
  const period =
    times.length === 0
      ? ''
      : `${sayInstant(Math.min(...times.map((t) => t.from)), zone)} to ${sayInstant(Math.max(...times.map((t) => t.to)), zone)}, `;
  return `<h1>Fleet review: ${sayCount(fleet.pairs.length, 'pair')}</h1>
${notKnownLines(fleet)}<p class="verdict">${html(first)}</p>
${rest.map((s) => `<p>${html(s)}</p>`).join('\n')}
<p class="second">${period}all times in ${html(zone)}.</p>`;
}

async function questionSection(
  { id, title, figures, table, howComputed }: FleetSection,
  { pause }: ReportOptions,
): Promise<string> {
  const drawn: string[] = [];
  for (const one of figures) {
    await pause?.();
    drawn.push(await figure(one.spec, one.caption, one.id));
  }
  return section(
    id,
    html(title),
    `${drawn.join('\n')}\n${tableHtml(table)}\n<p class="second"><b>${howComputedTitle}.</b> ${html(howComputed)}</p>`,
  );
}

function tableHtml(table: ShownTable): string {
  const { columns, rows, note } = onPaper(table);
  const numberClass = (index: number): string => (columns[index]?.isNumber === true ? ' class="number"' : '');
  const head = columns.map((c, index) => `<th scope="col"${numberClass(index)}>${html(c.title)}</th>`);
  const body = rows.map(
    ({ cells: [first, ...rest] }) =>
      `<tr><th scope="row" class="long named">${cell(first)}</th>${rest.map((c, index) => `<td${numberClass(index + 1)}>${cell(c)}</td>`).join('')}</tr>`,
  );
  const more = note === '' ? '' : `\n<p class="second">${html(note)}</p>`;
  return `<div class="scroll"><table class="shown">
<thead><tr>${head.join('')}</tr></thead>
<tbody>${body.join('\n')}</tbody>
</table></div>${more}`;
}

function cell(shown: ShownCell | undefined): string {
  if (shown === undefined) return '';
  const colour = classOf(shown);
  return colour === '' ? html(shown.text) : `<span class="${colour}">${html(shown.text)}</span>`;
}

/** The lines behind what is said of the pairs that stand out. */
function lossesSection({ pairs }: Fleet): string {
  const worse = pairs.filter((pair) => pair.standsOut === true && pair.evidence.length > 0);
  return worse.length === 0 ? '' : section('evidence', 'Evidence', worse.map(lossLines).join('\n'));
}

function lossLines({ pair, losses, evidence }: PairReview): string {
  const lines = evidence.map((l) => `<li>${html(l.file)}, line ${l.line} <code>${html(l.text)}</code></li>`);
  return `<h3>Losses of ${html(pair)}: the newest ${evidence.length} of ${losses}</h3>
<ul class="lines">
${lines.join('\n')}
</ul>`;
}
