import { abortsAtFixedTime } from './aborts-at-fixed-time.ts';
import { activeAbsent } from './active-absent.ts';
import { activeOverloaded } from './active-overloaded.ts';
import type { Cause } from './cause.ts';
import { configurationPending } from './configuration-pending.ts';
import { firmwareDiffers } from './firmware-differs.ts';
import { firmwareWide } from './firmware-wide.ts';
import { followsModule } from './follows-module.ts';
import { followsSlot } from './follows-slot.ts';
import { linkDown } from './link-down.ts';
import { linksCrossed } from './links-crossed.ts';
import { memoryShort } from './memory-short.ts';
import { modelsDiffer } from './models-differ.ts';
import { poorSeating } from './poor-seating.ts';
import { restartLoop } from './restart-loop.ts';
import { supplyFault } from './supply-fault.ts';
import { tooLittleData } from './too-little-data.ts';

/** All causes, in the order in which a person would look; the last one judges what the others could say. */
export const causes: readonly Cause[] = [
  activeAbsent,
  firmwareDiffers,
  modelsDiffer,
  linkDown,
  linksCrossed,
  configurationPending,
  restartLoop,
  poorSeating,
  supplyFault,
  activeOverloaded,
  memoryShort,
  abortsAtFixedTime,
  followsModule,
  followsSlot,
  firmwareWide,
  tooLittleData,
];
