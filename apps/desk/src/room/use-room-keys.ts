/** Hands off: arrow keys, page keys (what pedals for turning pages send) and space. */
import { useEffect, useRef } from 'react';

interface RoomActions {
  readonly next: () => void;
  readonly previous: () => void;
  readonly toggle: () => void;
}

const KEYS: Readonly<Record<string, keyof RoomActions>> = {
  ArrowRight: 'next',
  ArrowDown: 'next',
  PageDown: 'next',
  ArrowLeft: 'previous',
  ArrowUp: 'previous',
  PageUp: 'previous',
  ' ': 'toggle',
};

/** Whether a key belongs to a control that has the focus. */
function isTaken(target: EventTarget | null, key: string): boolean {
  if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) return true;
  return key === ' ' && target instanceof HTMLButtonElement;
}

/** Listens while the room is open. */
export function useRoomKeys(actions: RoomActions): void {
  const latest = useRef(actions);
  latest.current = actions;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const action = KEYS[event.key];
      if (!action || isTaken(event.target, event.key)) return;
      event.preventDefault();
      latest.current[action]();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
