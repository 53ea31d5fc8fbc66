/** What would be lost if the page were left now. */
export interface Unsaved {
  /** Pairs with job fields that were typed and are in no file yet. */
  readonly jobs: ReadonlySet<string>;
  /** Rules were taught since the phrasebook was saved. */
  readonly lessons: boolean;
}

/** Nothing was typed or taught yet. */
export const nothingUnsaved: Unsaved = { jobs: new Set(), lessons: false };

/** True if leaving must be asked about. */
export function wouldLose({ jobs, lessons }: Unsaved): boolean {
  return jobs.size > 0 || lessons;
}

/**
 * What is still unsaved after a file of that name was saved: a session holds all, the zip of all swap records the fields of every
 * pair, the record of a swap those of the pair that is shown, the phrasebook what was taught.
 */
export function afterSaving(
  unsaved: Unsaved,
  file: string,
  shown: { readonly pair: string; readonly phrasebook: string | null },
): Unsaved {
  if (file.endsWith('.steadypair-session.json')) return nothingUnsaved;
  if (file === shown.phrasebook) return { ...unsaved, lessons: false };
  if (file === 'swap-records.zip') return { ...unsaved, jobs: new Set() };
  if (!/-swap-\d{4}-\d\d-\d\d(_\d+)?\.(html|md)$/.test(file)) return unsaved;
  return { ...unsaved, jobs: new Set([...unsaved.jobs].filter((pair) => pair !== shown.pair)) };
}
