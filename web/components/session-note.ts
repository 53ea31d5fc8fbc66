import { html, nothing, type TemplateResult } from 'lit';
import { sayInstant } from '../../src/report/words.ts';
import type { SiteModel } from '../protocol.ts';

/** What cannot be shown where a session was opened in place of its files. */
export function sessionNote({ sessions, zone }: SiteModel): TemplateResult | typeof nothing {
  if (sessions.length === 0) return nothing;
  return html`${sessions.map(
    ({ saved }) =>
      html`<p class="second session-note">Opened from a session saved on ${sayInstant(Date.parse(saved), zone)}. Its log files are not here: lines around evidence cannot be shown, and new rules do not reach them.</p>`,
  )}`;
}
