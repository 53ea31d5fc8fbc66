/** How each thing looks on the staff, and what it means. */
export const staffLooks: readonly (readonly [string, string])[] = [
  ['heavy line', 'active'],
  ['thin line', 'standby, ready'],
  ['dashed line', 'standby, not ready'],
  ['dotted line', 'not known'],
  ['no line', 'nothing in that place'],
  ['fine strokes beneath', 'light flashing'],
  ['hairline beneath', 'light steady'],
  ['crossing', 'switchover'],
  ['bracket', 'bring-up, with a flag at five minutes'],
  ['faint band', 'it happened somewhere in there'],
  ['hatched', 'unobserved'],
];

/** What the staff's lines mean, as HTML; once beneath the first staff of a page. */
export const staffKey = `<ul class="key">${staffLooks.map(([look, meaning]) => `<li><b>${look}</b> ${meaning}</li>`).join('')}</ul>`;
