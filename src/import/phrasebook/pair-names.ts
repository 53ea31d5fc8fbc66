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

/** Words in capitals that stand where a unit may, and name no equipment. Common practice, no source. */
const commonWords: ReadonlySet<string> = new Set(
  `SYSTEM SYS CONTROLLER CTRL MAIN SERVER HOST LOCAL LOCALHOST MASTER SLAVE PRIMARY SECONDARY BACKUP ACTIVE STANDBY REDUNDANCY
  PARTNER PEER PAIR UNIT MODULE DEVICE NODE STATION OPERATOR USER ADMIN SCADA HMI PLC DCS CPU MEMORY NETWORK NET LINK IO ALARM
  ALARMS EVENT EVENTS LOG LOGGER JOURNAL SERVICE DAEMON KERNEL PROCESS APPLICATION APP DRIVER FIRMWARE CONFIG SECURITY AUDIT
  STATUS STATE UNKNOWN NONE NULL ALL OTHER`.split(/\s+/),
);

/** Whether a word in capitals without a figure, such as `OUTFALL`, may be the name of a pair. */
export function mayNamePair(name: string): boolean {
  return /^[A-Z][A-Z_]{2,}$/.test(name) && !commonWords.has(name);
}
