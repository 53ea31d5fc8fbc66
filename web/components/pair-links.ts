import { html, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { addressOf } from '../address.ts';

const places = [
  ['swap', 'record'],
  ['diagnosis', 'diagnosis'],
  ['fleet', 'fleet'],
] as const;

function hrefOf(view: string, pair: string): string {
  return addressOf({ view, pair, swap: null, span: null, inputs: {} });
}

/** The name of a pair as a link to what it needs, its diagnosis or its record. An address without a view says so. */
export function pairName(pair: string): TemplateResult {
  return html`<a class="long" href=${hrefOf('', pair)}>${terminal(pair)}</a>`;
}

/** The name of a pair as a link to its record. */
export function recordLink(pair: string): TemplateResult {
  return html`<a class="long" href=${hrefOf('swap', pair)}>${terminal(pair)}</a>`;
}

/** Links to where a pair is shown; `but`: the view that the links stand in. */
export function pairLinks(pair: string, but = ''): TemplateResult {
  const others = places.filter(([view]) => view !== but);
  return html`<span class="pair-links no-print">${others.map(
    ([view, words]) =>
      html`<a href=${hrefOf(view, pair)}>${words}<span class="hidden"> of ${terminal(pair)}</span></a>`,
  )}</span>`;
}
