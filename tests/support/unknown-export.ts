/** Seconds of a clock as `HH:MM:SS`. */
function clock(seconds: number): string {
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${two(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

const everySeconds = 30;
/** Half b is out of its place in these minutes; its twin is back in step at the third. */
const swapped = { out: 40, in: 45, inStep: 52, end: 120 } as const;

/**
 * Two hours of a pair that nothing is known of, in words of nobody: 14 March 2026 from 08:00:00, every 30 s. Half a leads,
 * half b follows; the module of half b is drawn at 08:40, another is put in at 08:45, and it is in step again at 08:52.
 */
export function unknownExport(): string {
  const rows = ['Moment;Seat;Topic;Mark'];
  for (let second = 0; second <= swapped.end * 60; second += everySeconds) {
    const stamp = `14.03.2026 ${clock(8 * 3600 + second)}`;
    const isOut = second >= swapped.out * 60 && second < swapped.in * 60;
    const isInStep = second < swapped.out * 60 || second >= swapped.inStep * 60;
    const say = (seat: string, topic: string, mark: string): void => {
      rows.push(`${stamp};weir-4-${seat};${topic};${mark}`);
    };
    say('a', 'Duty', 'leads');
    say('a', 'Twin in step', isInStep ? 'J' : 'N');
    say('a', 'Badge', 'S-100');
    if (isOut) continue;
    say('b', 'Duty', 'follows');
    say('b', 'Badge', second < swapped.out * 60 ? 'S-200' : 'S-300');
  }
  return `${rows.join('\n')}\n`;
}

/** How many rows that is: five every 30 s, but for the ten polls in which half b is out, which have three. */
export const unknownRows = 5 * (swapped.end * 2 + 1) - 2 * (swapped.in - swapped.out) * 2;
