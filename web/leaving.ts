import { afterSaving, nothingUnsaved, type Unsaved, wouldLose } from './unsaved.ts';

/** Asks before the page is left while something would be lost. */
export interface Leaving {
  /** What would be lost has changed. */
  change(next: (before: Unsaved) => Unsaved): void;
}

/** Listens to what is saved; `shown` says which pair and phrasebook that is about. */
export function askOnLeave(shown: () => Parameters<typeof afterSaving>[2]): Leaving {
  let unsaved = nothingUnsaved;
  let isAsking = false;
  const change: Leaving['change'] = (next) => {
    unsaved = next(unsaved);
    if (wouldLose(unsaved) === isAsking) return;
    isAsking = !isAsking;
    // A page that listens is not kept by the browser for going back to: it listens only while it must.
    if (isAsking) window.addEventListener('beforeunload', ask);
    else window.removeEventListener('beforeunload', ask);
  };
  window.addEventListener('saved', (event) => {
    if (event instanceof CustomEvent) change((before) => afterSaving(before, event.detail, shown()));
  });
  return { change };
}

function ask(event: BeforeUnloadEvent): void {
  event.preventDefault();
}
