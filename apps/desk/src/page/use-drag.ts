/** Dragging an exercise by its number to another place in the list. */
import { type PointerEvent, useCallback, useRef, useState } from 'react';

/** Where a dragged exercise would land: before the exercise at this index. */
export interface DragState {
  /** Index of the exercise that is dragged. */
  readonly from: number;
  /** Index of the exercise before which it would land. */
  readonly before: number;
}

/** Pixels that a pointer moves before a press becomes a drag. */
const SLACK_PX = 6;

function itemsOf(list: HTMLElement): readonly HTMLElement[] {
  return [...list.querySelectorAll<HTMLElement>('[data-exercise]')];
}

function indexUnder(list: HTMLElement, x: number, y: number): number {
  const items = itemsOf(list);
  const inReading = items.findIndex((item) => {
    const box = item.getBoundingClientRect();
    const sameRow = y >= box.top && y < box.bottom;
    return (
      y < box.top ||
      (sameRow && x < box.left + box.width / 2) ||
      (sameRow && y < box.top + box.height / 2 && x < box.right)
    );
  });
  return inReading < 0 ? items.length : inReading;
}

/** Drags exercises of the list that `list` points at. Indices count from 0. */
export function useDrag(onMove: (from: number, to: number) => void): {
  readonly list: React.RefObject<HTMLOListElement | null>;
  readonly drag: DragState | null;
  readonly grab: (event: PointerEvent<HTMLElement>) => void;
} {
  const list = useRef<HTMLOListElement>(null);
  const [drag, setDrag] = useState<DragState | null>(null);
  const latestMove = useRef(onMove);
  latestMove.current = onMove;
  const grab = useCallback((event: PointerEvent<HTMLElement>) => {
    const handle = event.currentTarget;
    const from = list.current ? itemsOf(list.current).findIndex((item) => item.contains(handle)) : -1;
    const { clientX, clientY } = event;
    let latest: DragState | null = null;
    handle.setPointerCapture(event.pointerId);
    const move = (at: globalThis.PointerEvent) => {
      const way = Math.hypot(at.clientX - clientX, at.clientY - clientY);
      if (!list.current || (!latest && way < SLACK_PX)) return;
      latest = { from, before: indexUnder(list.current, at.clientX, at.clientY) };
      setDrag(latest);
    };
    const end = ({ type }: globalThis.PointerEvent) => {
      handle.removeEventListener('pointermove', move);
      handle.removeEventListener('pointerup', end);
      handle.removeEventListener('pointercancel', end);
      setDrag(null);
      if (!latest || type === 'pointercancel') return;
      latestMove.current(from, latest.before > from ? latest.before - 1 : latest.before);
    };
    handle.addEventListener('pointermove', move);
    handle.addEventListener('pointerup', end);
    handle.addEventListener('pointercancel', end);
  }, []);
  return { list, drag, grab };
}
