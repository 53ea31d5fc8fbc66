import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { NamedText, SurveyModel } from '../protocol.ts';
import { saveText } from '../save-text.ts';

interface PhrasebookActions {
  use(phrasebook: NamedText | null): void;
  saveDraft(): void;
}

const mostShown = 20_000;

/** The phrasebook in use, its text, and how another is loaded or this one saved. */
export function phrasebookSection(
  phrasebook: NamedText | null,
  survey: SurveyModel | null,
  { use, saveDraft }: PhrasebookActions,
): TemplateResult {
  const onLoad = async ({ target }: Event): Promise<void> => {
    const file = target instanceof HTMLInputElement ? target.files?.[0] : undefined;
    if (file !== undefined) use({ file: file.name, text: await file.text() });
  };
  return html`<section id="phrasebook" tabindex="-1">
    <h2>Phrasebook</h2>
    <p>
      ${
        phrasebook === null
          ? 'Only the built-in phrasebook is in use: plain English.'
          : html`In use: <b class="long">${terminal(phrasebook.file)}</b>, and after it the built-in one.`
      }
    </p>
    <p class="choices">
      <label class="button">Load a phrasebook<input type="file" accept=".yaml,.yml" @change=${onLoad} /></label>
      <button type="button" id="save-phrasebook" ?disabled=${phrasebook === null} @click=${() => phrasebook !== null && saveText(baseName(phrasebook.file), phrasebook.text)}>Save the phrasebook</button>
      <button type="button" ?disabled=${phrasebook === null} @click=${() => use(null)}>Read without it</button>
      <button type="button" id="save-draft" ?disabled=${(survey?.files.length ?? 0) === 0} @click=${saveDraft}>Save a draft with all wordings</button>
    </p>
    ${phrasebook === null ? nothing : html`<details><summary>Show YAML</summary><pre tabindex="0" aria-label="Text of the phrasebook"><code>${terminal(phrasebook.text.slice(0, mostShown)).replaceAll('‹000A›', '\n')}</code></pre></details>`}
  </section>`;
}

function baseName(name: string): string {
  return name.split('/').at(-1) ?? name;
}
