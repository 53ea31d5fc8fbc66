import type { Diagnosis } from '../vocabulary.ts';
import { cite } from './cite.ts';
import { html } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { section } from './html-section.ts';
import { ladderOf, sayReference } from './ladder.ts';
import { inRowsRecognised } from './not-known.ts';
import { outcomeWords, sayCause, sayLength } from './outcome-words.ts';
import type { ReportOptions } from './report-options.ts';
import { sayInstantBounds } from './words.ts';

/** How far the last attempt got, stage by stage, against those that worked. */
export function ladderSection(diagnosis: Diagnosis, evidence: EvidenceList): string {
  const last = diagnosis.attempts.at(-1);
  const rows = ladderOf(diagnosis).map((r) => {
    const reached = last?.stages.find((s) => s.stage === r.stage);
    const cited = reached === undefined ? '' : cite(evidence, reached.evidence);
    return `<tr><th scope="row">${r.stage}</th><td class="number">${r.ended === 0 ? '' : r.ended}</td><td>${html(r.last)}${cited}</td><td>${html(r.reference)}</td></tr>`;
  });
  return section(
    'ladder',
    'Sync stages',
    `<div class="scroll"><table>
<thead><tr><th scope="col">Stage</th><th scope="col" class="number">Attempts that ended here</th><th scope="col">Time of the last attempt, with bounds</th><th scope="col">Successful attempts</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>
<p class="second">${html(sayReference(diagnosis))}</p>`,
  );
}

const mostAttempts = 25;

/** The attempts since the trouble began. */
export function attemptsSection(diagnosis: Diagnosis, { zone }: ReportOptions): string {
  const { attempts, from } = diagnosis;
  if (attempts.length === 0)
    return section('attempts', 'Attempts', `<p>None was logged${inRowsRecognised(diagnosis)}.</p>`);
  const rows = attempts
    .slice(-mostAttempts)
    .map(
      (a) =>
        `<tr><td class="clock">${sayInstantBounds(a.start, zone, from)}</td><td class="long">${html(a.half ?? 'not known')}</td><td>${sayCause(a)}</td><td>${a.stages.at(-1)?.stage ?? 'not logged'}</td><td>${outcomeWords[a.outcome]}</td><td class="number">${html(sayLength(a))}</td></tr>`,
    );
  const left = attempts.length - mostAttempts;
  const more = left > 0 ? `<p class="second">${left} earlier: see diagnose.json.</p>` : '';
  return section(
    'attempts',
    'Attempts',
    `<div class="scroll"><table>
<thead><tr><th scope="col">Started</th><th scope="col">Half</th><th scope="col">Cause</th><th scope="col">Stage reached</th><th scope="col">Result</th><th scope="col" class="number">After</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>${more}`,
  );
}

/** What was checked and is not supported, and what there was not enough data to judge. */
export function doubtedSection({ doubted, unjudged }: Diagnosis, evidence: EvidenceList): string {
  const rows = [
    ...doubted.map(({ title, against }) => {
      const [first] = against;
      const why = first === undefined ? '' : `${html(first.statement)}${cite(evidence, first.evidence)}`;
      return `<tr><th scope="row">${html(title)}</th><td>${why}</td></tr>`;
    }),
    ...unjudged.map(
      ({ title, missing }) =>
        `<tr><th scope="row">${html(title)}</th><td>not enough data to judge; missing: ${missing.join(', ')}</td></tr>`,
    ),
  ];
  if (rows.length === 0) return '';
  return section(
    'doubted',
    'Checked and not supported',
    `<table class="checks"><thead><tr><th scope="col">Cause</th><th scope="col">Reason</th></tr></thead><tbody>${rows.join('\n')}</tbody></table>`,
  );
}
