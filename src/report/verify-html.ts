import { bringUps as bringUpsChart } from '../charts/bring-ups.ts';
import { staff as staffChart } from '../charts/staff.ts';
import { limitAsAdjective, type Swap, type Verification } from '../vocabulary.ts';
import { bringUpRows } from './bring-up-rows.ts';
import { cite } from './cite.ts';
import { html } from './escape.ts';
import { byFile, type EvidenceList, evidenceOf } from './evidence.ts';
import { figure } from './figure.ts';
import { htmlDocument } from './html-document.ts';
import { section } from './html-section.ts';
import { sayOpen } from './open-words.ts';
import type { ReportOptions } from './report-options.ts';
import { staffKey } from './staff-key.ts';
import { staffRows } from './staff-rows.ts';
import { statusWords } from './status-words.ts';
import {
  cautionsSection,
  evidenceSection,
  exposureSection,
  inputsSection,
  notKnownLines,
  otherSection,
  qualitySection,
  signSection,
} from './verify-html-annex.ts';
import { sayInstant, sayInstantBounds, sayMeasure } from './words.ts';

/**
 * The report on one swap: one self-contained HTML file that needs no script and no network and prints on A4 and Letter.
 * Same verification, same bytes.
 */
export async function verifyHtml(
  verification: Verification,
  swap: Swap,
  options: ReportOptions,
): Promise<string> {
  const evidence = byFile(evidenceOf(swap));
  const sections = [
    verdictSection(verification, swap, options),
    workSection(verification, swap, options),
    halvesSection(swap),
    stepsSection(swap, evidence, options),
    await staffSection(swap, options),
    await bringUpsSection(swap),
    checksSection(swap, evidence),
    exposureSection(swap, options),
    otherSection(swap, options),
    qualitySection(verification, swap, options),
    inputsSection(verification),
    evidenceSection(evidence),
    cautionsSection(),
    signSection(verification, swap),
  ];
  return htmlDocument(
    `Swap record of ${swap.pair}, ${sayInstant(swap.from, options.zone).replace(/ \d\d:.*/, '')}`,
    sections,
    options.version,
  );
}

function verdictSection(
  verification: Verification,
  { pair, site, statement, checks, open, from }: Swap,
  { zone }: ReportOptions,
): string {
  const reasons = checks.filter((c) => c.status !== 'pass');
  const list = reasons.map(
    (c) =>
      `<li><a href="#check-${c.id}"><span class="${c.status}">${html(c.title)}: ${statusWords[c.status]}.</span></a> ${html(c.statement)}</li>`,
  );
  const waiting = open === null ? '' : `\n<p>${html(sayOpen(open, zone, from))}</p>`;
  const all = `<p>All ${checks.length} checks pass.</p>`;
  return `<h1>Swap record: pair ${html(pair)}${site === null ? '' : `, ${html(site)}`}</h1>
${notKnownLines(verification)}<p class="verdict">${html(statement)}</p>${waiting}
${list.length === 0 ? all : `<ul>\n${list.join('\n')}\n</ul>`}`;
}

function workSection({ job }: Verification, swap: Swap, { zone }: ReportOptions): string {
  const blank = '<span class="blank"></span>';
  const said = (text: string | undefined | null): string =>
    text === undefined || text === null ? blank : html(text);
  return section(
    'work',
    'Work',
    `<dl>
<dt>Work order</dt><dd>${said(job?.workOrder)}</dd>
<dt>Site</dt><dd>${said(job?.site ?? swap.site)}</dd>
<dt>Done by</dt><dd>${said(job?.technician)}</dd>
<dt>Reviewed by</dt><dd>${said(job?.reviewer)}</dd>
<dt>Period</dt><dd>${sayInstant(swap.from, zone)} to ${sayInstant(swap.to, zone)}, all times in ${html(zone)}</dd>
</dl>`,
  );
}

function halvesSection({ halves, checks }: Swap): string {
  const models = checks.find((c) => c.id === 'models-matched');
  const cell = (text: string | null): string => `<td class="long">${html(text ?? 'not known')}</td>`;
  const rows = halves.map(
    (h) =>
      `<tr><th scope="row" class="long">${html(h.half)}</th>${cell(h.model.before)}${cell(h.model.after)}${cell(h.serial.before)}${cell(h.serial.after)}${cell(h.firmware.before)}${cell(h.firmware.found)}${cell(h.firmware.after)}</tr>`,
  );
  return section(
    'halves',
    'Before and after',
    `<div class="scroll"><table>
<thead><tr><th scope="col">Half</th><th scope="col">Model before</th><th scope="col">after</th><th scope="col">Serial before</th><th scope="col">after</th><th scope="col">Firmware before</th><th scope="col">found</th><th scope="col">after</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>
<p class="second">Found: the first firmware the new module reported.${models?.status === 'fail' ? ` ${html(models.statement)}` : ''}</p>`,
  );
}

async function staffSection(swap: Swap, { zone }: ReportOptions): Promise<string> {
  const rows = staffRows(swap.staff, zone);
  const drawn = await figure(staffChart.spec(rows), staffChart.describe(rows), 'staff');
  return section('staff', 'The pair over time', `${drawn}\n${staffKey(swap.staff.limitSeconds)}`);
}

function stepsSection(
  { steps, checks, from }: Swap,
  evidence: EvidenceList,
  { zone }: ReportOptions,
): string {
  const status = new Map(checks.map((c) => [c.id, c]));
  const rows = steps.map((step) => {
    const rested = step.checks.flatMap((id) => {
      const check = status.get(id);
      return check === undefined
        ? []
        : [
            `<a class="${check.status}" href="#check-${id}">${html(check.title)}: ${statusWords[check.status]}</a>`,
          ];
    });
    const took = step.duration === null ? '' : html(sayMeasure(step.duration));
    return `<tr><td class="clock">${sayInstantBounds(step, zone, from)}</td><td>${html(step.statement)}${cite(evidence, step.evidence)}</td><td class="took">${took}</td><td>${rested.join('<br>')}</td></tr>`;
  });
  return section(
    'steps',
    'Steps',
    `<div class="scroll"><table class="steps">
<thead><tr><th scope="col">Time</th><th scope="col">What happened</th><th scope="col">Duration, with bounds</th><th scope="col">Check</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>`,
  );
}

async function bringUpsSection({ bringUps, staff }: Swap): Promise<string> {
  const rows = bringUpRows(bringUps, staff.limitSeconds);
  if (rows.length === 0) return '';
  return section(
    'bring-ups',
    `Bring-ups against the ${limitAsAdjective(staff.limitSeconds)} limit`,
    await figure(bringUpsChart.spec(rows), bringUpsChart.describe(rows), 'bring-ups'),
  );
}

function checksSection({ checks }: Swap, evidence: EvidenceList): string {
  const rows = checks.map(
    (c) =>
      `<tr id="check-${c.id}"><th scope="row">${html(c.title)}</th><td class="outcome ${c.status}">${statusWords[c.status]}</td><td>${html(c.statement)}${cite(evidence, c.evidence)}</td></tr>`,
  );
  return section(
    'checks',
    'Checks',
    `<table class="checks">
<thead><tr><th scope="col">Check</th><th scope="col">Result</th><th scope="col">Reason</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table>`,
  );
}
