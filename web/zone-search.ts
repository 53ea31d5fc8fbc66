/** A time zone with what its clock is ahead of UTC by now. */
export interface ZoneFound {
  readonly name: string;
  /** `UTC+01:00`. */
  readonly offset: string;
}

const most = 60;

/** All zones that the browser's IANA data names, and UTC, which it leaves out. */
export function allZones(): readonly string[] {
  const all = Intl.supportedValuesOf('timeZone');
  return all.includes('UTC') ? all : ['UTC', ...all];
}

/** The zones whose names hold all of the words, in any order and case; `Sao Paulo` and `sao_paulo` are one. At most sixty. */
export function findZones(names: readonly string[], words: string, at: number): readonly ZoneFound[] {
  const wanted = folded(words)
    .split(/[\s/]+/)
    .filter((word) => word !== '');
  return names
    .filter((name) => wanted.every((word) => folded(name).includes(word)))
    .slice(0, most)
    .map((name) => ({ name, offset: offsetOf(name, at) }));
}

/** A zone's own spelling for a name in any case; `null` where there is no such zone. */
export function zoneNamed(text: string): string | null {
  const name = text.trim().replaceAll(' ', '_');
  // A bare offset is no place: its clocks would never change.
  if (!/^[A-Za-z]/.test(name)) return null;
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone === 'UTC' &&
      /^utc$/i.test(name)
      ? 'UTC'
      : spelt(name);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The spelling of the list, where it has the name; an older name of a zone stays as it was given. */
function spelt(name: string): string {
  return allZones().find((zone) => zone.toLowerCase() === name.toLowerCase()) ?? name;
}

/** What is wrong with the text of a zone; `null` where nothing is, or nothing was typed. */
export function zoneProblem(text: string): string | null {
  const typed = text.trim();
  if (typed === '' || zoneNamed(typed) !== null) return null;
  return `There is no time zone "${typed}". Type a part of its name, such as Lisbon, and choose it from the list.`;
}

/** What a zone's clock is ahead of UTC by at an instant. */
export function offsetOf(name: string, at: number): string {
  const parts = new Intl.DateTimeFormat('en', { timeZone: name, timeZoneName: 'longOffset' }).formatToParts(
    at,
  );
  const said = parts.find(({ type }) => type === 'timeZoneName')?.value ?? 'GMT';
  return said === 'GMT' ? 'UTC+00:00' : said.replace('GMT', 'UTC');
}

function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('_', ' ').toLowerCase();
}
