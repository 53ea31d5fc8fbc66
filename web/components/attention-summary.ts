import { html, type TemplateResult } from 'lit';
import type { Attention } from '../../src/vocabulary.ts';
import { needsAttention, shortReasons } from '../health-words.ts';
import type { SiteModel } from '../protocol.ts';
import { isAllKnown } from './not-known.ts';
import { pairName } from './pair-links.ts';

/** How many pairs need attention, and which two of them first. */
export function attentionSummary(site: SiteModel): TemplateResult {
  const { pairs, attention } = site;
  const open = attention.filter(isOpen);
  const all = pairs.length === 1 ? 'One pair' : `${pairs.length} pairs`;
  if (open.length === 0) return html`${all}; ${nothingWrong(site)}`;
  return html`${all}; ${open.length === 1 ? 'one needs' : `${open.length} need`} attention: ${worst(open)}.`;
}

/** The two worst pairs, each with its gravest reason: the same in every view. */
export function worstPairs(site: SiteModel): TemplateResult | null {
  const open = site.attention.filter(isOpen);
  return open.length === 0 ? null : worst(open);
}

function isOpen({ reasons: [first] }: Attention): boolean {
  return first !== undefined && needsAttention(first.kind);
}

function worst(open: readonly Attention[]): TemplateResult {
  const [first, second] = open.map(
    ({ pair, reasons: [gravest] }) =>
      html`${pairName(pair)} (${gravest === undefined ? '' : shortReasons[gravest.kind]})`,
  );
  if (second === undefined) return html`${first}`;
  return open.length === 2 ? html`${first} and ${second}` : html`${first} first, then ${second}`;
}

/** That nothing needs attention can be said only where all was recognised, and every state is known. */
function nothingWrong(site: SiteModel): string {
  const unknown = site.pairs.filter(({ health }) => health.state === 'unknown').length;
  if (unknown > 0)
    return `the state of ${unknown === site.pairs.length ? 'every pair' : unknown} is not known.`;
  if (!isAllKnown(site)) return 'nothing that needs attention was found in the rows recognised.';
  return site.pairs.length === 1 ? 'it needs no attention.' : 'none needs attention.';
}
