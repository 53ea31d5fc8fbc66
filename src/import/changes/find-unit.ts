import type { Stream } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { saysUnit, subjectIn } from '../phrasebook/file-subject.ts';
import type { Groups } from '../phrasebook/patterns.ts';
import { type FileSubject, fitsOwn, type Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { roleNamed, subjectOf, type UnitParts } from '../phrasebook/subjects.ts';
import type { SinkState } from './sink-state.ts';
import { newUnit, type Unit, unitText } from './units.ts';

/** No site has as many controllers: the rest are taken for one unit that is not known, so that memory stays bounded. */
export const mostUnits = 10_000;

/** The unit of a row; made when first named. */
export function unitOf(
  state: SinkState,
  unit: string,
  parts: UnitParts | undefined,
  kind: Stream['kind'],
): Unit {
  const key = parts === undefined ? unit : keyOf(parts);
  const known = state.units.get(key);
  if (known !== undefined) return known;
  if (state.unitList.length >= mostUnits) return furtherUnits(state, kind);
  const named = parts ?? { unit, half: '', role: '' };
  const text = unitText(unit, parts);
  const { of, phrasebook, used } = state;
  if (fitsOwn(phrasebook.ignoreUnits, text, used) || fitsOwn(phrasebook.ignoreUnits, named.unit, used)) {
    const made = newUnit(detached(text), null, 'site', state.unitList.length, kind);
    made.isIgnored = true;
    return keep(state, key, made);
  }
  if (of !== undefined && !saysUnit(phrasebook, named, of)) return unitOfFile(state, key, named, of, kind);
  const { subject: said, by, isHalfOfFile } = subjectIn(phrasebook, named, of, used);
  const isRefused = said !== null && by !== 'site' && state.refusedPairs.has(said.pair);
  const subject = isRefused ? null : said;
  // A row that names a half belongs to that half, in any role: its stream goes on through every switchover.
  const isState = parts !== undefined && parts.role !== '' && subject !== null && subject.half !== null;
  if (isState) {
    const made = unitOf(state, unit, { ...parts, role: '' }, kind);
    state.units.set(detached(key), made);
    return made;
  }
  const source = kind === 'note' || isBeside(state, parts) ? 'column' : by;
  const made = newUnit(detached(text), subject, source, state.unitList.length, kind);
  made.isHalfOfFile = isHalfOfFile;
  made.saysHalf = otherHalf(state.phrasebook, parts);
  return keep(state, key, made);
}

function keyOf({ unit, pair, half, role }: UnitParts): string {
  return `${unit}\n${half}\n${role}${pair === undefined ? '' : `\n${pair}`}`;
}

function keep(state: SinkState, key: string, unit: Unit): Unit {
  state.unitList.push(unit);
  state.units.set(detached(key), unit);
  return unit;
}

/** The unit of a row that says no unit, or what is none: that of its file, in the half and the role that the row says. */
function unitOfFile(
  state: SinkState,
  key: string,
  { half, role }: UnitParts,
  of: FileSubject,
  kind: Stream['kind'],
): Unit {
  const { subject, isHalfOfFile } = subjectIn(state.phrasebook, { unit: '', half, role }, of);
  const held = subject?.half === null ? role : '';
  const own = `\n\n\n${half}\n${held}`;
  const known = state.units.get(own);
  const made =
    known ??
    newUnit(
      [of.text, half, held].filter((p) => p !== '').join(' '),
      subject,
      'column',
      state.unitList.length,
      kind,
    );
  made.isHalfOfFile = isHalfOfFile;
  if (known === undefined) keep(state, own, made);
  // Any text may stand where a unit would: so many are looked up again each time.
  if (state.units.size < mostUnits) state.units.set(detached(key), made);
  return made;
}

/**
 * The unit of a parameter: that of its row, unless the name of the parameter says of which it is, or of which half or role of
 * that of the row.
 */
export function ownerOf(state: SinkState, row: Unit, name: string): Unit {
  const known = row.named.get(name);
  if (known !== undefined || row.parameters.has(name)) return known ?? row;
  const found = state.phrasebook.parameterPatterns?.find(name) ?? null;
  const isKnown = found === null || state.phrasebook.parameters.has(name);
  const owner = isKnown ? row : unitNamed(state, row, found.groups);
  // So many names are no parameters: what is not kept is looked up again each time.
  if (owner !== row && row.named.size < mostUnits) row.named.set(detached(name), owner);
  return owner;
}

function unitNamed(state: SinkState, row: Unit, { unit, pair, half, role }: Groups): Unit {
  if (unit === undefined && pair === undefined && half === undefined && role === undefined) return row;
  const parts = { unit: unit ?? pair ?? row.text, half: half ?? '', role: role ?? '' };
  const isBare = half === undefined && role === undefined;
  if (unit !== undefined && pair === undefined)
    return unitOf(state, unit, isBare ? undefined : parts, row.kind);
  const key = `name\n${pair ?? row.index}\n${parts.unit}\n${parts.half}\n${parts.role}`;
  const known = state.units.get(key);
  if (known !== undefined) return known;
  if (state.unitList.length >= mostUnits) return furtherUnits(state, row.kind);
  const of = pair === undefined ? row.subject : { pair, half: null, role: null };
  const subject =
    of === null
      ? null
      : { ...of, half: half ?? of.half, role: role === undefined ? of.role : roleNamed(role) };
  const made = newUnit(detached(unitText('', parts)), subject, 'site', state.unitList.length, row.kind);
  state.unitList.push(made);
  state.units.set(detached(key), made);
  return made;
}

/** Whether the text stands where only pairs stand, or a half or a role beside it. */
function isBeside({ hasPairColumn }: SinkState, parts: UnitParts | undefined): boolean {
  return hasPairColumn || (parts !== undefined && (parts.isPair === true || parts.half + parts.role !== ''));
}

/** The half that a unit's text says, where the column beside it says another. */
function otherHalf(phrasebook: Phrasebook, parts: UnitParts | undefined): string | null {
  if (parts === undefined || parts.half === '') return null;
  const said = subjectOf(phrasebook, { unit: parts.unit, half: '', role: '' })?.half ?? null;
  return said !== null && said.toLowerCase() !== parts.half.trim().toLowerCase() ? said : null;
}

/** What the units past the last are listed as. */
export const furtherText = '(further units)';

function furtherUnits(state: SinkState, kind: Stream['kind']): Unit {
  const text = furtherText;
  const known = state.units.get(text);
  if (known !== undefined) return known;
  return keep(state, text, newUnit(text, null, 'word', state.unitList.length, kind));
}
