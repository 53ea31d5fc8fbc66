import { diagnosisView } from './components/diagnosis-view.ts';
import { fleetView } from './components/fleet-view.ts';
import { nowView } from './components/now-view.ts';
import { pairsView } from './components/pairs-view.ts';
import { sourcesView } from './components/sources-view.ts';
import { swapView } from './components/swap-view.ts';
import type { View } from './view.ts';

/** All views, in the order of the page's first row. */
export const views: readonly View[] = [pairsView, swapView, diagnosisView, fleetView, sourcesView, nowView];
