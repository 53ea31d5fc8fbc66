import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import type { LinesAround } from '../protocol.ts';

/** What is to be said where the lines shown are not those of the file. */
const said: Readonly<Record<LinesAround['state'], string>> = {
  same: '',
  kept: '',
  differs: 'The file on disk no longer says this. The line is shown as it was read.',
  unreadable:
    'The file can no longer be read: it was moved, changed or deleted. The line is shown as it was read.',
};

/** A cited line with its file and number, and the lines around it once they are read. */
export function evidenceNote(line: SourceLine, around: LinesAround | undefined): TemplateResult {
  const { first, last, lines, state } = around ?? asCited(line);
  return html`<figure class="note">
    <figcaption>${terminal(line.file)}, line ${line.line}</figcaption>
    ${said[state] === '' ? nothing : html`<p class="inconclusive">${said[state]}</p>`}
    ${
      lines.length === 0
        ? nothing
        : html`<ol start=${first}>${lines.map((text, index) => item(text, first + index, line.line, last))}</ol>`
    }
  </figure>`;
}

/** As the line was kept: of some there is only the place. */
function asCited({ line, text }: SourceLine): LinesAround {
  const lines = text === '' ? [] : text.split('\n');
  return { first: line, last: line + lines.length - 1, lines, state: 'kept' };
}

function item(text: string, line: number, from: number, to: number): TemplateResult {
  const isCited = line >= from && line <= to;
  return html`<li value=${line} class=${isCited ? 'cited-line' : 'around'}><code>${terminal(text)}</code></li>`;
}
