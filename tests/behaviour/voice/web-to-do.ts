/** The files of the page whose texts still have words that must not come back. It only gets shorter. */
export const webToDo: readonly string[] = [
  'web/browser-files.ts',
  'web/components/clocks-section.ts',
  'web/components/diagnosis-tables.ts',
  'web/components/diagnosis-view.ts',
  'web/components/draft-form.ts',
  'web/components/file-fold.ts',
  'web/components/file-section.ts',
  'web/components/fleet-view.ts',
  'web/components/pairs-view.ts',
  'web/components/remarks-section.ts',
  'web/components/sources-view.ts',
  'web/components/stamps-form.ts',
  'web/components/swap-tables.ts',
  'web/components/swap-view.ts',
  'web/health-words.ts',
  'web/site-session.ts',
];
