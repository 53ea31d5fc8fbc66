import { type PanelOptions, panelText } from '../../src/report/panel.ts';
import type { SwapNow } from '../../src/vocabulary.ts';
import { newest } from './made-swap-now.ts';

/** A panel of 80 columns in black alone, four seconds after the newest row of a log. */
export const options = (clock: Partial<PanelOptions['clock']> = {}): PanelOptions => ({
  zone: 'UTC',
  paint: (text) => text,
  clock: { at: newest, isSilent: false, behindSeconds: 4, ...clock },
  staff: null,
  width: 80,
});

/** The lines of that panel. */
export const panel = (now: SwapNow, clock: Partial<PanelOptions['clock']> = {}): readonly string[] =>
  panelText(now, options(clock));
