import { sayLimit } from '../vocabulary.ts';

/** How each thing looks on the staff, and what it means. `limitSeconds` is where the flag of a bring-up stands. */
export function staffLooks(limitSeconds: number): readonly (readonly [string, string])[] {
  return [...looks, ['bracket', `bring-up, with a flag at ${sayLimit(limitSeconds)}`], ...more];
}

const looks: readonly (readonly [string, string])[] = [
  ['heavy line', 'active'],
  ['thin line', 'standby, ready'],
  ['dashed line', 'standby, not ready'],
  ['dotted line', 'not known'],
  ['no line', 'nothing in that place'],
  ['fine strokes beneath', 'light flashing'],
  ['hairline beneath', 'light steady'],
  ['crossing', 'switchover'],
];

const more: readonly (readonly [string, string])[] = [
  ['faint band', 'it happened somewhere in there'],
  ['hatched', 'unobserved'],
  ['bar with its words', 'not as it should be for so long'],
];

/** What the staff's lines mean, as HTML; once beneath the first staff of a page. */
export function staffKey(limitSeconds: number): string {
  const items = staffLooks(limitSeconds).map(([look, meaning]) => `<li><b>${look}</b> ${meaning}</li>`);
  return `<ul class="key">${items.join('')}</ul>`;
}
