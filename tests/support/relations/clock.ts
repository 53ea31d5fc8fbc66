/** The clock of an instant, `14:03:20`. */
export function clock(time: number): string {
  return new Date(time).toISOString().slice(11, 19);
}
