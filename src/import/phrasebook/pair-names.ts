/** Capitals with a figure, as plants number their equipment: `RO1`, `PLC_12`. Common practice, no source. */
const plantName = /^[A-Z](?=[A-Z_]*[0-9])[A-Z0-9_]*$/;

/**
 * What programs number with the same marks as a plant numbers halves: `worker-1`, `Step 2`, `error/5`. Common practice, no
 * source.
 */
const programName =
  /^(?:threads?|workers?|pools?|tasks?|process|proc|pid|tid|jobs?|queues?|executor|exec|timer|ports?|sessions?|main|phase|step|stage|line|row|errors?|err|codes?|events?|alarms?|page|part|version|try|attempt)[0-9_]*$/i;

/** Whether a name alone, without a half or a role, is one of equipment; any other word may be one of anything. */
export function isPlantName(name: string): boolean {
  return plantName.test(name);
}

/** Whether a name is one that programs number: no pair, even with something like a half behind it. */
export function isProgramName(name: string): boolean {
  return programName.test(name);
}
