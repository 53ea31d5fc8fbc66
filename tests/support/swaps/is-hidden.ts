import type { Source } from '../stories/dressing.ts';
import type { TrueCheck } from '../stories/truth.ts';

/** Checks of several signals that pass on those that are told, and name the others. Source: design.md, section 5. */
const partial: Readonly<Record<string, readonly string[]>> = {
  'nothing-at-fault': ['supply', 'light', 'fault'],
  'links-restored': ['link-a', 'link-b', 'links'],
  'not-flapping': ['partner-ready', 'partner-present'],
};

/**
 * Whether the files cannot show what breaks a check, so that a `pass` is by the contract:
 *
 * - only polls tell the signal, and the state that broke it was shorter than their spacing: breaks shorter than that are
 *   stated as not excluded (design.md, section 2, Observed);
 * - the check rests on several signals, and none of those that broke it is told, but another is.
 *
 * A signal that no file tells hides nothing else: the check is then `not-observed`.
 */
export function isHidden({ id, broken }: TrueCheck, sources: readonly Source[]): boolean {
  if (broken === null) return false;
  const telling = (signals: readonly string[]): readonly Source[] =>
    sources.filter((source) => signals.some((signal) => source.signals.has(signal)));
  const showing = telling(broken.signals);
  if (showing.length === 0) return telling(partial[id] ?? []).length > 0;
  const { seconds } = broken;
  return seconds !== null && showing.every((s) => s.kind === 'poll' && seconds <= s.spacingSeconds);
}
