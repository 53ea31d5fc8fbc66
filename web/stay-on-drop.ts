/** A file that is dropped beside the drop target is not opened by the browser: the page, with all it read, would be gone. */
export function stayOnDrop(): void {
  const stay = (event: DragEvent): void => {
    // The drop target has taken it already.
    if (event.defaultPrevented) return;
    event.preventDefault();
    if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'none';
  };
  window.addEventListener('dragover', stay);
  window.addEventListener('drop', stay);
}
