/** The ink of the pictures: dark on the light ground of look.md; colour for the abnormal only, and never alone. */
export const ink = '#1c2024';
export const secondInk = '#5b6168';
export const rule = '#d9d5cb';
export const rust = '#9a3b1c';
export const ochre = '#7a5600';
/** How the lines of several series differ, in their order. */
export const dashes = [[], [7, 3], [2, 2], [9, 3, 2, 3], [1, 4]] as const;
/** The widest label at a line's end: a longer one is cut, and whole in the caption and the table. */
export const labelWidth = 220;
const sans = 'system-ui, -apple-system, Segoe UI, Roboto, Helvetica, Arial, sans-serif';

/** What all pictures share: no frame, no ground of their own, quiet axes. */
export const quiet = {
  background: 'transparent',
  font: sans,
  view: { stroke: null },
  axis: {
    labelColor: secondInk,
    titleColor: secondInk,
    domainColor: secondInk,
    tickColor: secondInk,
    gridColor: rule,
    labelFontSize: 13,
    titleFontSize: 13,
    titleFontWeight: 'normal',
  },
  text: { color: ink, fontSize: 13 },
} as const;
