import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { NamedLesson } from '../lesson-draft.ts';

/** What a person can do with the lessons that are collected. */
interface LessonActions {
  drop(place: number): void;
  use(): void;
  undo(): void;
}

/** The lessons that are collected, to be read with at once; and a way back from those that were read with last. */
export function lessonList(
  lessons: readonly NamedLesson[],
  undo: number,
  { drop, use, undo: goBack }: LessonActions,
): TemplateResult | typeof nothing {
  if (lessons.length === 0 && undo === 0) return nothing;
  const count = lessons.length === 1 ? 'one lesson' : `${lessons.length} lessons`;
  return html`<ul id="lessons">
      ${lessons.map(
        ({ says }, place) =>
          html`<li><span class="long">${terminal(says)}</span> <button type="button" class="link" @click=${() => drop(place)}>Take back<span class="hidden"> ${terminal(says)}</span></button></li>`,
      )}
    </ul>
    <p class="choices">
      ${lessons.length === 0 ? nothing : html`<button type="button" id="use-lessons" @click=${use}>Read again with ${count}</button>`}
      ${undo === 0 ? nothing : html`<button type="button" id="undo" @click=${goBack}>Undo the last lesson</button>`}
    </p>`;
}
