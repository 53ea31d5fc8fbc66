import type { Input, Swap, Verification } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { html } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { section } from './html-section.ts';
import { notKnownOf, sayNoFinding, sayNotKnown } from './not-known.ts';
import { questionWords } from './question-words.ts';
import type { ReportOptions } from './report-options.ts';
import { checkedByHand, signCaveat } from './sign-words.ts';
import { toldFindings } from './told-findings.ts';
import { sayCount, sayInstant, sayInstantBounds, sayMeasure, sayWhen } from './words.ts';

/** How long the pair had no ready partner. */
export function exposureSection({ exposure }: Swap, { zone }: ReportOptions): string {
  const total = html(sayMeasure({ ...exposure, censored: false, outcome: null }));
  const spans = exposure.spans.map((s) => `${sayInstant(s.from, zone)} to ${sayInstant(s.to, zone)}`);
  const list = spans.length === 0 ? '' : `<p class="second">${spans.join('; ')}.</p>`;
  return section(
    'exposure',
    'Exposure',
    `<p>Without a ready partner from the first removal to the end: ${total}.</p>${list}`,
  );
}

/** What the verdict below cannot know; empty where all was recognised. */
export function notKnownLines(of: Parameters<typeof notKnownOf>[0]): string {
  return sayNotKnown(notKnownOf(of))
    .map((said) => `<p><span class="inconclusive">Not known:</span> ${html(said)}</p>\n`)
    .join('');
}

const mostOthers = 25;

/** What happened besides the steps; empty if nothing did. */
export function otherSection({ otherEvents, from }: Swap, { zone }: ReportOptions): string {
  if (otherEvents.length === 0) return '';
  const rows = otherEvents.slice(0, mostOthers).map((e) => {
    const value = e.value === null ? '' : ` ${e.value}`;
    return `<tr><td class="clock">${sayInstantBounds(e, zone, from)}</td><td class="long">${html(e.half ?? 'pair')}</td><td class="long">${html(`${e.signal}${value}`)}</td></tr>`;
  });
  const more =
    otherEvents.length > mostOthers
      ? `<p class="second">${sayCount(otherEvents.length - mostOthers, 'more event')}: see the timeline.</p>`
      : '';
  return section(
    'others',
    'Other events',
    `<table>
<thead><tr><th scope="col">Time</th><th scope="col">Half</th><th scope="col">Event</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table>${more}`,
  );
}

/** Findings of the pair in that time, and what was odd in the files. */
export function qualitySection(
  verification: Pick<Verification, 'findings' | 'inputs'>,
  swap: Pick<Swap, 'pair' | 'from' | 'to'>,
  { zone }: ReportOptions,
): string {
  const told = toldFindings(verification, swap);
  const items = told.map(
    (f) =>
      `<li>${f.severity === 'info' ? '' : `<span class="${f.severity === 'critical' ? 'fail' : 'inconclusive'}">${f.severity}:</span> `}${sayWhen(f, zone)}${html(f.statement)}${f.pair === null ? quoted(f.evidence[0].text) : ''}</li>`,
  );
  const computed = questionWords(told);
  const words = computed === '' ? '' : `\n<p class="second">${html(computed)}</p>`;
  return section(
    'findings',
    'Findings and data quality',
    items.length === 0 ? `<p>${sayNoFinding(verification)}</p>` : `<ul>\n${items.join('\n')}\n</ul>${words}`,
  );
}

/** The line itself, for what could not be read: a person may understand it at once. */
function quoted(text: string): string {
  return text === '' ? '' : ` <code>${html(text)}</code>`;
}

/** The files with their counts and SHA-256. */
export function inputsSection({ inputs }: Pick<Verification, 'inputs'>): string {
  const rows = inputs.map(
    (
      i,
    ) => `<tr class="joined"><th scope="row" class="long">${html(i.file)}</th><td>${html(i.layout)}</td><td class="number">${i.rows.read}</td><td class="number">${i.rows.used + i.rows.unchanged}</td><td class="number">${i.rows.ignored}</td><td class="number">${i.rows.unmatched}</td><td class="number">${i.rows.rejected}</td><td>${html(i.zone)}</td></tr>
<tr><td colspan="8" class="long">${fingerprint(i)}</td></tr>`,
  );
  return section(
    'inputs',
    'Files',
    `<div class="scroll"><table>
<thead><tr><th scope="col">File</th><th scope="col">Layout</th><th scope="col" class="number">Rows</th><th scope="col" class="number">Recognised</th><th scope="col" class="number">Ignored</th><th scope="col" class="number">Not recognised</th><th scope="col" class="number">Rejected</th><th scope="col">Zone</th></tr></thead>
<tbody>${rows.join('\n')}</tbody>
</table></div>`,
  );
}

/** Size and SHA-256 of a file, and of the archive it came in. */
function fingerprint({ bytes, sha256, container }: Input): string {
  const own = `${bytes} bytes, <code>SHA-256 ${html(sha256)}</code>`;
  if (container === undefined) return own;
  return `${own}<br>in ${html(container.file)}, <code>SHA-256 ${html(container.sha256)}</code>`;
}

/** The numbered lines, by file; `things` says behind what they stand, and where the rest is. */
export function evidenceSection(
  { lines, leftOut }: EvidenceList,
  things = 'checks and steps: see verify.json',
): string {
  const files = [...new Set(lines.map((l) => l.file))];
  const numbered = lines.map((l, index) => ({ ...l, number: index + 1 }));
  const lists = files.map((file) => {
    const own = numbered.filter((l) => l.file === file);
    const items = own.map(
      (l) => `<li id="line-${l.number}">line ${l.line} <code>${html(l.text)}</code></li>`,
    );
    return `<h3>${html(file)}</h3>\n<ol class="lines" start="${own[0]?.number ?? 1}">\n${items.join('\n')}\n</ol>`;
  });
  const more =
    leftOut > 0 ? `<p class="second">${sayCount(leftOut, 'more line')} for the same ${things}.</p>` : '';
  return section('evidence', 'Evidence', `${lists.join('\n')}${more}`);
}

/** The cautions. */
export function cautionsSection(): string {
  return section(
    'cautions',
    'Cautions',
    `<div class="cautions">${cautions.map((c) => `<p>${html(c)}</p>`).join('')}</div>`,
  );
}

/** Lines to sign on; what was not observed is signed for by hand. */
export function signSection({ job }: Verification, swap: Swap): string {
  const list = checkedByHand(swap)
    .map((c) => `<p>☐ ${html(c.title)}, checked at the cabinet</p>`)
    .join('');
  const said = signCaveat(swap);
  const caveat = said === null ? '' : `<p>${said}</p>`;
  return section(
    'sign-off',
    'Sign-off',
    `${list}${caveat}<div class="sign">${signLine('Done by', job?.technician)}${signLine('Reviewed by', job?.reviewer)}</div>`,
  );
}

function signLine(role: string, name: string | undefined): string {
  return `<div>${role}${name === undefined ? ' (name)' : `: ${html(name)}`}</div><div>Signature</div><div>Date</div>`;
}
