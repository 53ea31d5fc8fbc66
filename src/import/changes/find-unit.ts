import type { Stream } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { saysUnit, subjectIn } from '../phrasebook/file-subject.ts';
import type { FileSubject, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf, type UnitParts } from '../phrasebook/subjects.ts';
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
  const { of } = state;
  if (of !== undefined && !saysUnit(state.phrasebook, named, of))
    return unitOfFile(state, key, named, of, kind);
  const { subject, isHalfOfFile } = subjectIn(state.phrasebook, named, of);
  // A row that names a half belongs to that half, in any role: its stream goes on through every switchover.
  const isState = parts !== undefined && parts.role !== '' && subject !== null && subject.half !== null;
  if (isState) {
    const made = unitOf(state, unit, { ...parts, role: '' }, kind);
    state.units.set(detached(key), made);
    return made;
  }
  const made = newUnit(detached(unitText(unit, parts)), subject, state.unitList.length, kind);
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
    newUnit([of.text, half, held].filter((p) => p !== '').join(' '), subject, state.unitList.length, kind);
  made.isHalfOfFile = isHalfOfFile;
  if (known === undefined) keep(state, own, made);
  // Any text may stand where a unit would: so many are looked up again each time.
  if (state.units.size < mostUnits) state.units.set(detached(key), made);
  return made;
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
  return keep(state, text, newUnit(text, null, state.unitList.length, kind));
}
