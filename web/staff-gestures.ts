/** What a pointer does on an element; places are shares of the element's width, 0 at its left. */
export interface Gestures {
  /** A pointer that is not pressed is there; `null`: it left. */
  over(at: number | null): void;
  /** A press begins. Gives whether the drag that may follow marks a span; else it pans. */
  isMarking(event: PointerEvent): boolean;
  /** A drag from one place to another; `last` when it ends. */
  marked(from: number, to: number, last: boolean): void;
  /** A drag has moved on by so much since it began. */
  dragged(by: number, last: boolean): void;
  pressed(at: number): void;
}

/** A pointer that moves further between press and release drags. */
const mostDrift = 3;

/** Listeners that turn what a pointer does into gestures. */
export interface PointerListeners {
  readonly down: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: (event: PointerEvent) => void;
  readonly leave: () => void;
}

export function pointerListeners(gestures: Gestures): PointerListeners {
  let drag: { readonly x: number; readonly from: number; readonly marks: boolean; moved: boolean } | null =
    null;
  const follow = (event: PointerEvent, last: boolean): void => {
    if (drag === null) return;
    if (Math.abs(event.clientX - drag.x) > mostDrift) drag.moved = true;
    if (!drag.moved) return;
    const at = shareOf(event);
    if (drag.marks) gestures.marked(drag.from, at, last);
    else gestures.dragged(at - drag.from, last);
  };
  return {
    down: (event) => {
      if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag = { x: event.clientX, from: shareOf(event), marks: gestures.isMarking(event), moved: false };
    },
    move: (event) => {
      if (drag === null) gestures.over(shareOf(event));
      else follow(event, false);
    },
    up: (event) => {
      follow(event, true);
      if (drag !== null && !drag.moved && event.type === 'pointerup') gestures.pressed(drag.from);
      drag = null;
    },
    leave: () => {
      if (drag === null) gestures.over(null);
    },
  };
}

/** Where on an element an event is, as a share of its width; beyond 0 to 1 it is beside it. */
export function shareOf({ clientX, currentTarget }: Pick<MouseEvent, 'clientX' | 'currentTarget'>): number {
  if (!(currentTarget instanceof Element)) return 0;
  const { left, width } = currentTarget.getBoundingClientRect();
  return width === 0 ? 0 : (clientX - left) / width;
}
