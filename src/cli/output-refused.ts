/** What the output would not take, as the system says it: who tells of it is loaded only then. */
export class OutputRefused extends Error {
  constructor(cause: unknown) {
    super('The output was refused.', { cause });
  }
}
