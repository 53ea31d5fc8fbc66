/** The cautions of design.md, section 11: shown wherever the work can hurt someone. */
export const cautions: readonly string[] = [
  'Replacing a module on a running process can upset it.',
  "Follow the maker's procedure, the site's permit and management-of-change rules and local codes; a qualified person decides.",
  'Never remove a module on the word of a log alone: check at the cabinet which half is standby.',
];

/** What of them stands beside a hold point where there is one line of 80 columns. */
export const shortCaution = 'Never remove a module on a log alone: check at the cabinet which is standby.';
