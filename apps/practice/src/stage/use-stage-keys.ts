/** Keys, and pedals that send keys (page keys, as pedals for turning pages do). */
import { useEffect, useRef } from 'react';
import type { StageActions } from './use-stage-actions.ts';

type Act = (actions: StageActions) => void;

const KEYS: Readonly<Record<string, Act>> = {
  ' ': ({ toggle }) => toggle(),
  Enter: ({ toggle }) => toggle(),
  ArrowLeft: ({ turn }) => turn(-1),
  ArrowRight: ({ turn }) => turn(1),
  ArrowUp: ({ faster }) => faster(1),
  ArrowDown: ({ faster }) => faster(-1),
  PageDown: ({ right }) => right(),
  PageUp: ({ left }) => left(),
  Escape: ({ back }) => back(),
  t: ({ tap }) => tap(),
  c: ({ clean }) => clean(),
  s: ({ stumbled }) => stumbled(),
  g: ({ limbs }) => limbs(),
};

const ON_BUTTONS = new Set([' ', 'Enter']);
const ON_LINES = new Set(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']);

/** Whether a key belongs to the control that has the focus, or to an open dialog. A pedal works on a line too. */
function isTaken(target: EventTarget | null, key: string): boolean {
  if (!(target instanceof Element)) return false;
  if (target.closest('dialog')) return true;
  if (target.matches('input[type="range"]')) return ON_LINES.has(key);
  if (target.matches('input, select, textarea')) return true;
  return ON_BUTTONS.has(key) && target.matches('button, a, summary');
}

/** Listens while something is on the stand. */
export function useStageKeys(actions: StageActions): void {
  const latest = useRef(actions);
  latest.current = actions;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
      if (!act || isTaken(event.target, event.key)) return;
      event.preventDefault();
      act(latest.current);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
