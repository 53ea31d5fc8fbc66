import { defaultRules } from '../timeline/rules.ts';
import { sayLimit } from '../vocabulary.ts';

/** Rules of the trade that the next checks rest on. Common practice, no source. */
export const fieldRules = {
  firmware:
    'Common practice: the firmware of both halves must match before they synchronise, and a new module may arrive with older firmware than the active one.',
  cables: 'Common practice: both network cables go back into their own ports.',
  light: `Common practice: if the light is not steady ${sayLimit(defaultRules.lightLimitSeconds)} after the start, stop and call for support.`,
} as const;
