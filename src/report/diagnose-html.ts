import { bringUps as bringUpsChart } from '../charts/bring-ups.ts';
import { staff as staffChart } from '../charts/staff.ts';
import { type Diagnosis, limitAsAdjective, type Point, type RankedCause } from '../vocabulary.ts';
import { bringUpRows } from './bring-up-rows.ts';
import { cite } from './cite.ts';
import { evidenceOfDiagnosis } from './diagnose-evidence.ts';
import { toldOf } from './diagnose-findings.ts';
import { attemptsSection, doubtedSection, ladderSection } from './diagnose-html-annex.ts';
import { html } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { figure } from './figure.ts';
import { htmlDocument } from './html-document.ts';
import { section } from './html-section.ts';
import type { ReportOptions } from './report-options.ts';
import { rankingRule, sayWeight } from './say-weight.ts';
import { saySentence } from './sentences.ts';
import { staffKey } from './staff-key.ts';
import { staffRows } from './staff-rows.ts';
import {
  cautionsSection,
  evidenceSection,
  inputsSection,
  notKnownLines,
  qualitySection,
} from './verify-html-annex.ts';
import { sayInstant } from './words.ts';

/**
 * The diagnosis of one pair: one self-contained HTML file that needs no script and no network and prints on A4 and
 * Letter. Same diagnosis, same bytes.
 */
export async function diagnoseHtml(diagnosis: Diagnosis, options: ReportOptions): Promise<string> {
  const evidence = evidenceOfDiagnosis(diagnosis);
  const { healthy } = diagnosis;
  const sections = [
    answerSection(diagnosis, options),
    ...(healthy ? [] : [ladderSection(diagnosis, evidence)]),
    await staffSection(diagnosis, options),
    ...(healthy ? [] : [attemptsSection(diagnosis, options)]),
    await bringUpsSection(diagnosis),
    ...(healthy
      ? []
      : [causesSection(diagnosis, evidence), doubtedSection(diagnosis, evidence), checkSection(diagnosis)]),
    cautionsSection(),
    qualitySection(...toldOf(diagnosis), options),
    inputsSection(diagnosis),
    ...(evidence.lines.length === 0 ? [] : [evidenceSection(evidence, 'statements: see diagnose.json')]),
  ];
  return htmlDocument(
    `Diagnosis of ${diagnosis.pair}, ${sayInstant(diagnosis.to, options.zone).replace(/ \d\d:.*/, '')}`,
    sections,
    options.version,
  );
}

function answerSection(diagnosis: Diagnosis, { zone }: ReportOptions): string {
  const { pair, site, sentences, chosen, from, to } = diagnosis;
  const [first = '', ...rest] = sentences.map((s) => saySentence(s, zone, from));
  return `<h1>Diagnosis: pair ${html(pair)}${site === null ? '' : `, ${html(site)}`}</h1>
${notKnownLines(diagnosis)}<p class="verdict">${html(first)}</p>
${rest.map((s) => `<p>${html(s)}</p>`).join('\n')}
<p class="second">${chosen === null ? '' : `${html(chosen)} `}${sayInstant(from, zone)} to ${sayInstant(to, zone)}, all times in ${html(zone)}.</p>`;
}

async function staffSection({ staff }: Diagnosis, { zone }: ReportOptions): Promise<string> {
  if (staff.to <= staff.from) return '';
  const rows = staffRows(staff, zone);
  const drawn = await figure(staffChart.spec(rows), staffChart.describe(rows), 'staff');
  return section('staff', 'The pair over time', `${drawn}\n${staffKey(staff.limitSeconds)}`);
}

const mostBringUps = 12;

async function bringUpsSection({ bringUps, staff }: Diagnosis): Promise<string> {
  const rows = bringUpRows(bringUps.slice(-mostBringUps), staff.limitSeconds);
  if (rows.length === 0) return '';
  return section(
    'bring-ups',
    `Bring-ups against the ${limitAsAdjective(staff.limitSeconds)} limit`,
    await figure(bringUpsChart.spec(rows), bringUpsChart.describe(rows), 'bring-ups'),
  );
}

function causesSection({ causes }: Diagnosis, evidence: EvidenceList): string {
  const points = (said: readonly Point[], word: string): string =>
    said
      .map(
        (p) =>
          `<tr><th scope="row">${word}</th><td>${html(p.statement)}${cite(evidence, p.evidence)}</td></tr>`,
      )
      .join('\n');
  const blocks = causes.map((cause) => {
    const rows = [points(cause.for, 'for'), points(cause.against, 'against')];
    return `<h3 id="cause-${cause.id}">${headOf(cause)}</h3>
<table class="checks"><tbody>
${rows.filter((r) => r !== '').join('\n')}
</tbody></table>`;
  });
  return section(
    'causes',
    'Causes, most likely first',
    `${blocks.join('\n')}\n<p class="second">${html(rankingRule)}</p>`,
  );
}

function headOf({ rank, id, title, decibans }: RankedCause): string {
  const weight = sayWeight(decibans);
  const said = rank === 1 ? `<span class="inconclusive">${weight}</span>` : weight;
  return `${rank}. ${html(title)} (${id}): ${said}`;
}

function checkSection({ causes }: Diagnosis): string {
  const items = causes.map((c) => `<li><a href="#cause-${c.id}">${c.id}</a>: ${html(c.next)}</li>`);
  return section('next', 'What to check, in this order', `<ol>\n${items.join('\n')}\n</ol>`);
}
