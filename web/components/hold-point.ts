import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import type { Condition, HoldPoint, HoldStatus } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { sayHoldPoint } from '../swap-clock.ts';
import { linesButton } from './lines-button.ts';

/** More than these are folded to their count: what is met is of no concern, and one that is not is enough to wait. */
const [mostMet, mostOpen] = [9, 4];

const looks: Readonly<Record<HoldStatus, string>> = { met: 'met', waiting: 'waiting', stop: 'stop fail' };

/** A hold point: how it stands, in large type, its conditions with their lines, what is not met first, and the cautions beside it. */
export function holdPoint(hold: HoldPoint): TemplateResult {
  const { status, conditions } = hold;
  const met = conditions.filter((c) => c.status === 'met');
  const open = (['stop', 'waiting'] as const).flatMap((wanted) =>
    conditions.filter((c) => c.status === wanted),
  );
  const first = open.slice(0, mostOpen);
  const more = open.slice(mostOpen);
  return html`<section id="now-hold">
    <h2>Hold point ${sayHoldPoint(hold)}</h2>
    <p class=${`hold ${looks[status]}`}><b>${status}</b>${status === 'stop' ? html`<span class="call">Stop and call for support.</span>` : nothing}</p>
    <div class="conditions">
      ${open.length === 0 ? html`<p>All ${conditions.length} conditions are met.</p>` : html`<ul>${first.map(condition)}</ul>`}
      ${more.length === 0 ? nothing : html`<details class="fold"><summary>${more.length} more ${more.length === 1 ? 'condition is' : 'conditions are'} not met. Show</summary><ul>${more.map(condition)}</ul></details>`}
    </div>
    <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
    ${met.length === 0 ? nothing : metPart(met, conditions.length)}
  </section>`;
}

function metPart(met: readonly Condition[], all: number): TemplateResult {
  const list = html`<ul class="met-conditions">${met.map(condition)}</ul>`;
  return met.length > mostMet
    ? html`<details class="fold met-conditions"><summary>${met.length} of ${all} conditions are met. Show</summary>${list}</details>`
    : list;
}

function condition({ status, statement, evidence }: Condition): TemplateResult {
  const words = terminal(statement);
  const cite = citing(statement, evidence);
  return html`<li class="condition" @mouseenter=${cite} @focusin=${cite}><b class=${looks[status]}>${status}</b> <span>${words} ${linesButton(statement, evidence)}</span></li>`;
}
