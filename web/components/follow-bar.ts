import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayCount } from '../../src/report/words.ts';
import type { FollowedFolder } from '../following.ts';
import { chooseAgain } from '../read-again.ts';
import { Refused } from '../session.ts';

declare global {
  interface Window {
    /** Not every browser has it. */
    readonly showDirectoryPicker?: (options: { readonly mode: 'read' }) => Promise<FileSystemDirectoryHandle>;
  }
}

/** Asks for a folder and fires `follow`, bubbling; nothing where the browser lets no page read a folder again. */
export function followButton(): TemplateResult | typeof nothing {
  if (window.showDirectoryPicker === undefined) return nothing;
  return html`<button type="button" class="follow" @click=${(event: Event) => void choose(event)}>Follow a folder</button>`;
}

async function choose({ currentTarget: from }: Event): Promise<void> {
  const tell = (name: string, detail: unknown): void =>
    void from?.dispatchEvent(new CustomEvent(name, { bubbles: true, detail }));
  try {
    tell('follow', await window.showDirectoryPicker?.({ mode: 'read' }));
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    // The person closed the window that asks.
    if (error.name === 'AbortError') return;
    const what = 'the browser does not let this page read a folder again.';
    const fix = 'Use “Choose a folder”, and Read again under Swap now.';
    tell('problem', new Refused({ where: 'the folder', what, fix }));
  }
}

/** How a folder comes to be followed, or the files are read again: `names` are those of the files read. Of a folder that is followed what went wrong. */
export function followBar(followed: FollowedFolder | null, names: readonly string[]): TemplateResult {
  if (followed !== null) return troubles(followed);
  const can = window.showDirectoryPicker !== undefined;
  return html`<div class="follow-bar line no-print">
    <span class="second">${can ? 'No folder is followed.' : 'This browser cannot follow a folder.'}</span>
    ${followButton()}
    ${names.length === 0 ? nothing : html`<button type="button" id="read-again" @click=${tell('read-again')}>Read again</button>${chooser(names)}`}
  </div>`;
}

function troubles({ name, said, problem }: FollowedFolder): TemplateResult {
  return html`<div class="follow-bar no-print">
    <div role="alert">${problem === null ? nothing : html`<p class="inconclusive">${terminal(name)}: ${problem}</p>`}</div>
    <div role="status">${said.map((words) => html`<p class="second">${terminal(words)}</p>`)}</div>
  </div>`;
}

/** Which folder is followed, and how that ends. */
export function followedLine({ name, files }: FollowedFolder): TemplateResult {
  const of = files === 0 ? 'no files in it yet' : sayCount(files, 'file');
  return html`<p class="follow-bar line no-print"><span>Following <b class="long">${terminal(name)}</b>: ${of}, looked at every second.</span>
    <button type="button" id="unfollow" @click=${tell('unfollow')}>Stop following</button></p>`;
}

/** Takes the same files once more, in place of those of their names. */
function chooser(names: readonly string[]): TemplateResult {
  const words = chooseAgain(names);
  const isFolder = names.some((name) => name.includes('/'));
  const onChange = ({ currentTarget: from }: Event): void => {
    if (!(from instanceof HTMLInputElement)) return;
    const chosen = [...(from.files ?? [])];
    from.value = '';
    const files = chosen.map((file) => ({ name: isFolder ? file.webkitRelativePath : file.name, file }));
    if (files.length > 0)
      from.dispatchEvent(new CustomEvent('files', { bubbles: true, detail: { files, how: 'add' } }));
  };
  return html`<label class="button">${words}<input type="file" multiple ?webkitdirectory=${isFolder} @change=${onChange} /></label>`;
}

function tell(name: string): (event: Event) => void {
  return ({ currentTarget }) =>
    void currentTarget?.dispatchEvent(new CustomEvent(name, { bubbles: true, detail: null }));
}
