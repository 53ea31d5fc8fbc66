/** Lets the browser do what waits: input, a frame. What takes its time is done in parts of which none keeps a person waiting. */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
