import type { Stream } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf, type UnitParts, unitMeant } from '../phrasebook/subjects.ts';
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
  const key = parts === undefined ? unit : `${parts.unit}\n${parts.half}\n${parts.role}`;
  const known = state.units.get(key);
  if (known !== undefined) return known;
  if (state.unitList.length >= mostUnits) return furtherUnits(state, kind);
  const meant = unitMeant(state.phrasebook, parts ?? { unit, half: '', role: '' });
  const isRefused = meant !== null && meant.by !== 'site' && state.refusedPairs.has(meant.subject.pair);
  const subject = meant === null || isRefused ? null : meant.subject;
  // A row that names a half belongs to that half, in any role: its stream goes on through every switchover.
  const isState = parts !== undefined && parts.role !== '' && subject !== null && subject.half !== null;
  const made = isState
    ? unitOf(state, unit, { ...parts, role: '' }, kind)
    : newUnit(
        detached(unitText(unit, parts)),
        subject,
        kind === 'note' || isBeside(state, parts) ? 'column' : (meant?.by ?? 'word'),
        state.unitList.length,
        kind,
      );
  if (!isState) {
    state.unitList.push(made);
    made.saysHalf = otherHalf(state.phrasebook, parts);
  }
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
  const made = newUnit(text, null, 'word', state.unitList.length, kind);
  state.unitList.push(made);
  state.units.set(text, made);
  return made;
}
