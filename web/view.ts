import type { TemplateResult } from 'lit';
import type { PageState } from './page-state.ts';

/** One of the words in the page's first row, and what stands beneath it. */
export interface View {
  readonly id: string;
  readonly title: string;
  render(state: PageState): TemplateResult;
}
