import type { Input, SheetHalf, WorkSheet } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { cite } from './cite.ts';
import { html } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { htmlDocument } from './html-document.ts';
import { section } from './html-section.ts';
import {
  clipped,
  clippedFile,
  sheetEvidence,
  shownFiles,
  shownReasons,
  shownTrouble,
} from './prepare-extent.ts';
import { signSection, stepsSection } from './prepare-html-steps.ts';
import {
  halfCells,
  howExpected,
  sayExposure,
  sayFit,
  sayLosses,
  sayStandby,
  sayWanted,
} from './prepare-words.ts';
import type { ReportOptions } from './report-options.ts';
import { statementInCommand } from './settings.ts';
import { notKnownLines } from './verify-html-annex.ts';
import { sayCount, sayInstant, sayWhen } from './words.ts';

/**
 * The work sheet: one self-contained HTML file without script or network that prints on two pages of A4 and of Letter, what the work
 * rests on before, the work itself behind. Of long lists it shows the first and says how many more there are. Same sheet, same bytes.
 */
export function prepareHtml(sheet: WorkSheet, options: ReportOptions): string {
  const evidence = sheetEvidence(sheet);
  const before = [
    answerSection(sheet, evidence, options),
    workSection(sheet, options),
    halvesSection(sheet, evidence),
    troubleSection(sheet, evidence, options),
    expectedSection(sheet),
    filesSection(sheet),
    evidenceSection(evidence),
  ];
  const sections = [
    `<div class="sheet">\n${before.join('\n')}\n</div>`,
    stepsSection(sheet, evidence, options),
    signSection(sheet),
  ];
  return htmlDocument(
    `Work sheet of ${clipped(sheet.pair)}, ${sayInstant(sheet.asOf.time, options.zone).replace(/ \d\d:.*/, '')}`,
    sections,
    options.version,
    'The same files, read at the same time, give the same sheet.',
  );
}

function answerSection(sheet: WorkSheet, evidence: EvidenceList, { zone }: ReportOptions): string {
  const { pair, site, standby, readiness } = sheet;
  const { shown, more } = shownReasons(sheet);
  const reasons = shown.map(
    (r) => `<li>${html(clipped(r.statement, 'item'))}${cite(evidence, r.evidence)}</li>`,
  );
  const rest = more === 0 ? '' : `<li>${sayCount(more, 'more reason')}: see prepare.json</li>`;
  const list = reasons.length === 0 ? '' : `\n<ul>\n${reasons.join('\n')}${rest}\n</ul>`;
  const fit = html(clipped(sayFit(sheet, zone), 'sentence'));
  const marked = readiness.fit === false ? `<span class="fail">${fit}</span>` : fit;
  return `<h1>Work sheet: pair ${html(clipped(pair))}${site === null ? '' : `, ${html(clipped(site))}`}</h1>
${notKnownLines(sheet)}<p class="verdict">${html(clipped(sayStandby(sheet, zone), 'sentence'))}${cite(evidence, standby.evidence)}</p>
<p class="fit">${marked}</p>${list}
<p class="cautions">${cautions.map(html).join(' ')}</p>`;
}

function workSection({ job, site, madeAt, asOf }: WorkSheet, { zone }: ReportOptions): string {
  const said = (text: string | undefined | null): string =>
    text === undefined || text === null ? '<span class="blank"></span>' : html(clipped(text));
  return section(
    'work',
    `Work, all times in ${html(zone)}`,
    `<dl>
<dt>Work order</dt><dd>${said(job?.workOrder)}</dd>
<dt>Site</dt><dd>${said(job?.site ?? site)}</dd>
<dt>Done by</dt><dd>${said(job?.technician)}</dd>
<dt>Reviewed by</dt><dd>${said(job?.reviewer)}</dd>
<dt>Last line of the pair</dt><dd>${sayInstant(asOf.time, zone)}</dd>
<dt>Sheet made</dt><dd>${sayInstant(madeAt, zone)}</dd>
</dl>`,
  );
}

function halvesSection(sheet: WorkSheet, evidence: EvidenceList): string {
  const cell = ({ said, evidence: lines }: ReturnType<typeof halfCells>[number]): string => {
    const [first, ...rest] = lines;
    const cited = first === undefined ? '' : cite(evidence, [first, ...rest]);
    return `<td class="long">${html(clipped(said))}${cited}</td>`;
  };
  const row = (h: SheetHalf): string =>
    `<tr><th scope="row" class="long">${html(clipped(h.half))}</th>${halfCells(h, sheet).map(cell).join('')}<td class="long">${html(clipped(sayWanted(h), 'cell'))}</td></tr>`;
  return section(
    'halves',
    'Both halves as of the last line',
    `<div class="scroll"><table>
<thead><tr><th scope="col">Half</th><th scope="col">Role</th><th scope="col">Light</th><th scope="col">Model</th><th scope="col">Serial</th><th scope="col">Firmware</th><th scope="col">The new module must come to</th></tr></thead>
<tbody>${sheet.halves.map(row).join('\n')}</tbody>
</table></div>`,
  );
}

function troubleSection(sheet: WorkSheet, evidence: EvidenceList, { zone }: ReportOptions): string {
  const { shown, more } = shownTrouble(sheet);
  const [newest] = sheet.losses;
  const losses = `<p>${html(sayLosses(sheet, zone))}${newest === undefined ? '' : cite(evidence, newest.evidence)}</p>`;
  const items = shown.map(
    (f) =>
      `<li><span class="${f.severity === 'critical' ? 'fail' : 'inconclusive'}">${f.severity}:</span> ${sayWhen(f, zone)}${html(clipped(statementInCommand(f), 'item'))}${cite(evidence, f.evidence)}</li>`,
  );
  const rest = more === 0 ? '' : `<li>${sayCount(more, 'more finding')}: see prepare.json</li>`;
  const list = items.length === 0 ? '' : `\n<ul>\n${items.join('\n')}${rest}\n</ul>`;
  return section('trouble', 'Trouble', `${losses}${list}`);
}

function expectedSection({ exposure }: WorkSheet): string {
  const said = exposure.map((one) => `<p>${html(clipped(sayExposure(one), 'item'))}</p>`);
  return section(
    'expected',
    'Exposure to expect',
    `${said.join('\n')}\n<p class="second">${howExpected}</p>`,
  );
}

/** Files with their SHA-256, those of the pair first. */
function filesSection(sheet: WorkSheet): string {
  const { shown, more } = shownFiles(sheet);
  const row = (i: Input): string =>
    `<tr><th scope="row" class="long">${html(clippedFile(i.file, 60))}</th><td class="number">${i.rows.read}</td><td class="hash"><code>${html(i.sha256)}</code></td></tr>`;
  return section(
    'inputs',
    `Files${moreOf(more, 'file')}`,
    `<div class="scroll"><table>
<thead><tr><th scope="col">File</th><th scope="col" class="number">Rows</th><th scope="col">SHA-256</th></tr></thead>
<tbody>${shown.map(row).join('\n')}</tbody>
</table></div>`,
  );
}

/** The numbered lines; on paper each takes one line. */
function evidenceSection({ lines, leftOut }: EvidenceList): string {
  const items = lines.map(
    (l, index) =>
      `<li id="line-${index + 1}">${html(clippedFile(l.file, 40))}:${l.line} <code>${html(clipped(l.text, 'line'))}</code></li>`,
  );
  return section(
    'evidence',
    `Evidence${moreOf(leftOut, 'line')}`,
    `<ol class="lines short">\n${items.join('\n')}\n</ol>`,
  );
}

/** What a heading says of what its list leaves out. */
function moreOf(count: number, word: string): string {
  return count <= 0 ? '' : `, ${sayCount(count, `more ${word}`)} in prepare.json`;
}
