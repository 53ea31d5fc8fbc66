import type { Signal, Subject } from '../../vocabulary.ts';
import { type ClockOrder, clockOrder } from '../clock/clock-order.ts';
import { flagged } from '../phrasebook/flags.ts';
import {
  isIgnored,
  noteUsed,
  type ParameterRule,
  type Phrasebook,
  type UsedRules,
} from '../phrasebook/phrasebook-rules.ts';
import { parameterFound } from '../phrasebook/plain-parameters.ts';
import { addressed } from '../phrasebook/subjects.ts';
import { type GaugeReader, gaugeReader } from './gauges.ts';

/**
 * The instant of the last readings of parameters that are read together again and again, with nothing new. One that is
 * read by itself takes the instant with it, and then it is no longer `isValid` for all of them.
 */
export interface SharedTime {
  isValid: boolean;
  lastTime: number;
}

/** One parameter of one unit, with what was last read of it. */
export interface Parameter {
  readonly rule: ParameterRule;
  /** `null` for a gauge. */
  readonly signal: Signal | null;
  readonly subject: Subject;
  readonly gauge: GaugeReader | null;
  raw: string | undefined;
  value: string | null | undefined;
  lastTime: number;
  /** The latest instant before a row that was out of order: after a clock was set back the last reading is not the latest. */
  latest: number;
  readonly order: ClockOrder;
  /** The reading that ended its last silence, and how long that was, in milliseconds. */
  silentTo: number;
  silentFor: number;
  /** Where its last reading came with those of others: then the instant is kept there. */
  shared: SharedTime | null;
}

/**
 * A parameter of a unit, `null` where none is named; a text if it cannot be used: the wording, or nothing where it is known to
 * mean nothing.
 */
export function newParameter(
  phrasebook: Phrasebook,
  unit: Subject | null,
  name: string,
  used: UsedRules,
): Parameter | string {
  // What the site says of a name comes before plain English.
  const own = phrasebook.parameters.has(name) || (phrasebook.parameterPatterns?.find(name) ?? null) !== null;
  if (!own && isIgnored(phrasebook, name, used)) return '';
  const found = parameterFound(phrasebook, name);
  if (found === undefined || unit === null) return `parameter ${name}`;
  noteUsed(used, found.rule.place);
  const rule = flagged(found);
  if (rule === null) return `parameter ${name}`;
  // "active: role active" says nothing: the unit is the role.
  if (rule.signal === 'role' && unit.half === null && unit.role !== null) return '';
  const subject = addressed(unit, rule.signal, rule.subject);
  if (subject === null) return `parameter ${name} (names no half and no role)`;
  const { signal, scale } = rule;
  const isGauge = signal === 'load' || signal === 'free-memory';
  return {
    rule,
    subject,
    signal: isGauge ? null : signal,
    gauge: isGauge ? gaugeReader(subject, signal, scale) : null,
    raw: undefined,
    value: undefined,
    lastTime: Number.NEGATIVE_INFINITY,
    latest: Number.NEGATIVE_INFINITY,
    order: clockOrder(),
    silentTo: Number.NaN,
    silentFor: 0,
    shared: null,
  };
}

/** Only an identity can end: any other empty cell is no reading. */
export function mayEnd({ rule }: Parameter): boolean {
  return rule.signal === 'serial' || rule.signal === 'model' || rule.signal === 'firmware';
}

/** The latest instant at which a parameter was read; minus infinity before its first reading. */
export function readUntil({ shared, lastTime, latest }: Parameter): number {
  return Math.max(shared?.lastTime ?? lastTime, latest);
}

/** A parameter that was read together with others is about to be read by itself. */
export function leaveShared(parameter: Parameter): void {
  const { shared } = parameter;
  if (shared === null) return;
  parameter.lastTime = shared.lastTime;
  parameter.order.latest = shared.lastTime;
  parameter.shared = null;
  shared.isValid = false;
}
