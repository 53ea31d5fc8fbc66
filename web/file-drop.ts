import { droppedFiles } from './dropped-files.ts';
import type { NamedFile, Refusal } from './protocol.ts';

/** What is told of files that are dragged over the window. */
export interface DropTarget {
  /** Files are over the window, or no longer. */
  over(isOver: boolean): void;
  /** They were dropped. */
  dropped(files: readonly NamedFile[]): void;
  refused(refusal: Refusal): void;
}

/**
 * Makes the whole window take files that are dropped on it. What a part of the page takes itself is left to it; anything else
 * that is dropped is not opened by the browser: the page, with all it read, would be gone.
 */
export function takeDrops(target: DropTarget): void {
  // A drop is refused where the element under it has just changed, unless its dragenter says the same as its dragover.
  for (const kind of ['dragenter', 'dragover'] as const)
    window.addEventListener(kind, (event) => {
      if (event.defaultPrevented) return;
      event.preventDefault();
      const hasFiles = event.dataTransfer?.types.includes('Files') === true;
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = hasFiles ? 'copy' : 'none';
      target.over(hasFiles);
    });
  window.addEventListener('dragleave', (event) => {
    // Between two elements of the page it does not leave the window.
    if (event.relatedTarget === null) target.over(false);
  });
  window.addEventListener('drop', (event) => {
    target.over(false);
    if (event.defaultPrevented) return;
    event.preventDefault();
    if (event.dataTransfer?.types.includes('Files') === true) void take(event.dataTransfer, target);
  });
}

async function take(transfer: DataTransfer, target: DropTarget): Promise<void> {
  const found = await droppedFiles(transfer);
  if ('where' in found) target.refused(found);
  else if (found.length > 0) target.dropped(found);
  else
    target.refused({
      where: 'what was dropped',
      what: 'it holds no files.',
      fix: 'Drop the exports themselves.',
    });
}
