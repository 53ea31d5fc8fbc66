/** Gives the browser a text to save under a name; the window is told by `saved`, with the name. */
export function saveText(name: string, text: string): void {
  saveBlob(name, new Blob([text], { type: 'text/plain' }));
}

/** The same with bytes. */
export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
  window.dispatchEvent(new CustomEvent('saved', { detail: name }));
}
