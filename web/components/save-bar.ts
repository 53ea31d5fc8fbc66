import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { MadeBundle } from '../../src/bundle/prepare-bundle.ts';
import { sayCount } from '../../src/report/words.ts';
import { print } from '../paper.ts';
import { saveBlob, saveText } from '../save-text.ts';
import { type TextFile, zipOf } from '../zip-files.ts';
import { PageElement } from './page-element.ts';

/** One of the files that a view can save. */
export interface Choice {
  /** The id of its button. */
  readonly id: string;
  /** How its name ends. */
  readonly ending: string;
  readonly words: string;
}

/** What a view gives to take along. */
export interface Reports {
  /** The files of what is shown; each `Choice` picks one. */
  own(): Promise<readonly TextFile[]>;
  /** All that the view could show, for one zip. */
  all(): AsyncIterable<TextFile> | Iterable<TextFile>;
  readonly zipName: string;
  /** The way to a bundle, where the view has one. */
  readonly bundle?: { readonly name: string; make(isMasked: boolean): Promise<MadeBundle> } | undefined;
  readonly choices: readonly Choice[];
}

/**
 * The ways to take along what a view shows: save, print, copy, all as one zip. The first choice stands out of the fold. A
 * second one of a view, where its fields end, `isShort`: it saves and prints.
 */
export class SaveBar extends PageElement {
  static override properties = {
    reports: { attribute: false },
    isShort: { attribute: false },
    settled: { attribute: false },
    said: { state: true },
  };
  declare reports: Reports;
  declare isShort: boolean;
  /** Kept once what a person wrote last stands in the reports. */
  declare settled: () => Promise<unknown>;
  declare said: string;

  constructor() {
    super();
    this.isShort = false;
    this.settled = () => Promise.resolve();
    this.said = '';
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('reports')) this.said = '';
  }

  override render(): TemplateResult {
    const [first] = this.reports.choices;
    return html`<div class="choices">
        ${first === undefined ? nothing : this.button(first)}
        <button type="button" id=${this.idOf('print')} @click=${() => this.attempt(this.print())}>Print</button>
        ${this.isShort ? nothing : this.further()}
      </div>
      <p class="second" role="status">${this.said}</p>`;
  }

  private further(): TemplateResult {
    const [, ...others] = this.reports.choices;
    const isCopied = others.some(({ ending }) => ending === '.md');
    return html`${isCopied ? html`<button type="button" id="copy-markdown" @click=${() => this.attempt(this.copy())}>Copy summary</button>` : nothing}
      <button type="button" id="save-all" @click=${() => this.attempt(this.saveAll())}>Save all (zip)</button>
      ${
        others.length === 0
          ? nothing
          : html`<details class="more-files"><summary>More</summary>
            <div class="choices">${others.map((choice) => this.button(choice))}${this.bundleChoice()}</div></details>`
      }`;
  }

  private bundleChoice(): TemplateResult | typeof nothing {
    if (this.reports.bundle === undefined) return nothing;
    return html`<button type="button" id="save-bundle" @click=${() => this.attempt(this.saveBundle())}>Save bundle (zip with logs)</button>
      <label><input type="checkbox" id="mask-names" /> Mask names</label>`;
  }

  /** An id stands once in the page. */
  private idOf(id: string): string | typeof nothing {
    return this.isShort ? nothing : id;
  }

  private button(choice: Choice): TemplateResult {
    return html`<button type="button" id=${this.idOf(choice.id)} data-name=${choice.ending} @click=${() => this.attempt(this.save(choice))}>${choice.words}</button>`;
  }

  private async print(): Promise<void> {
    await this.settled();
    print(this);
  }

  private async fileOf({ ending }: Pick<Choice, 'ending'>): Promise<TextFile> {
    await this.settled();
    const found = (await this.reports.own()).find(({ name }) => name.endsWith(ending));
    if (found === undefined) throw new RangeError(`There is no report whose name ends in ${ending}.`);
    return found;
  }

  private async save(choice: Choice): Promise<void> {
    const { name, text } = await this.fileOf(choice);
    saveText(name, text);
    this.said = `Saved ${name}.`;
  }

  private async saveAll(): Promise<void> {
    await this.settled();
    const { zipName } = this.reports;
    let count = 0;
    const counted = async function* (files: ReturnType<Reports['all']>, tell: () => void) {
      for await (const file of files) {
        count += 1;
        tell();
        yield file;
      }
    };
    const files = counted(this.reports.all(), () => {
      this.said = `${sayCount(count, 'file')} written.`;
    });
    saveBlob(zipName, await zipOf(files));
    this.said = `Saved ${zipName} with ${sayCount(count, 'file')}.`;
  }

  private async saveBundle(): Promise<void> {
    await this.settled();
    const { bundle } = this.reports;
    if (bundle === undefined) return;
    this.said = 'Writing the bundle.';
    const isMasked = this.querySelector<HTMLInputElement>('#mask-names')?.checked === true;
    const { bytes, key } = await bundle.make(isMasked).catch((error: unknown) => {
      this.said = '';
      throw error;
    });
    saveBlob(bundle.name, new Blob([bytes.slice()], { type: 'application/zip' }));
    if (key === null) {
      this.said = `Saved ${bundle.name}.`;
      return;
    }
    const keyName = bundle.name.replace(/\.zip$/, '.key.json');
    saveText(keyName, key);
    this.said = `Saved ${bundle.name}, and its key as ${keyName}: keep the key, it is not in the bundle.`;
  }

  private async copy(): Promise<void> {
    const { text } = await this.fileOf({ ending: '.md' });
    try {
      await navigator.clipboard.writeText(text);
      this.said = 'Summary copied to the clipboard as Markdown.';
    } catch (error) {
      // Some browsers keep a page opened from disk from the clipboard.
      if (!(error instanceof DOMException || error instanceof TypeError)) throw error;
      this.said = 'The browser does not let this page use the clipboard. Save the summary instead.';
    }
  }

  private attempt(done: Promise<void>): void {
    done.catch((detail: unknown) =>
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail })),
    );
  }
}

customElements.define('save-bar', SaveBar);
