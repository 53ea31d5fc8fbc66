/** What a key does on the staff. */
export type StaffAction =
  | { readonly kind: 'zoom'; readonly by: number }
  /** By a share of the width. */
  | { readonly kind: 'pan'; readonly by: number }
  /** Moves the cursor by a share of the width; marks what it passes. */
  | { readonly kind: 'cursor'; readonly by: number; readonly isMarking: boolean }
  | { readonly kind: 'next-mark'; readonly step: 1 | -1 }
  | { readonly kind: 'fit-swap' | 'fit-log' | 'fit-span' | 'lines' | 'let-go' };

/** What the keys of the staff do, for the list of keys. */
export const staffKeys: readonly { readonly keys: string; readonly meaning: string }[] = [
  { keys: 'Left, Right', meaning: 'move the cursor on the staff' },
  { keys: 'Ctrl+Left, Ctrl+Right', meaning: 'cursor to the previous or next happening' },
  { keys: 'Shift+Left, Shift+Right, or Shift and drag', meaning: 'mark a span' },
  { keys: 'Page Up, Page Down', meaning: 'back or forward by half of what is shown' },
  { keys: '+ and -', meaning: 'zoom in or out at the cursor' },
  { keys: 'Home', meaning: 'fit the swap' },
  { keys: 'End', meaning: 'fit the log' },
  { keys: 'Enter', meaning: 'zoom to the marked span; else keep the lines of what is at the cursor' },
  { keys: 'Escape', meaning: 'release the marked span, then the cursor' },
  { keys: 'Wheel', meaning: 'zoom at the pointer, with Ctrl or Shift or while the staff has the focus' },
];

const cursorStep = 0.01;
const plain: Readonly<Record<string, StaffAction>> = {
  '+': { kind: 'zoom', by: 0.5 },
  '=': { kind: 'zoom', by: 0.5 },
  '-': { kind: 'zoom', by: 2 },
  PageUp: { kind: 'pan', by: -0.5 },
  PageDown: { kind: 'pan', by: 0.5 },
  Home: { kind: 'fit-swap' },
  End: { kind: 'fit-log' },
  Escape: { kind: 'let-go' },
};
const steps: Readonly<Record<string, 1 | -1>> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 };

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** What a key that was pressed does; `null` where the staff has no use for it. */
export function staffAction(
  { key, ctrlKey, metaKey, shiftKey, altKey }: Pressed,
  hasMarked: boolean,
): StaffAction | null {
  const isCommand = ctrlKey || metaKey;
  // Alt and an arrow belong to the browser: back and forward; Ctrl and + or - are its own zoom.
  if (altKey) return null;
  const step = steps[key];
  if (step !== undefined)
    return isCommand
      ? { kind: 'next-mark', step }
      : { kind: 'cursor', by: step * cursorStep, isMarking: shiftKey };
  if (isCommand) return null;
  if (key === 'Enter') return { kind: hasMarked ? 'fit-span' : 'lines' };
  return plain[key] ?? null;
}
