/** Keys of the ledge, heard everywhere but in a field: P plays, C compares, Alt with L (or L alone) loops a bar. */

import { nextLoop } from '@shedbook/playing';
import { useEffect, useRef } from 'react';
import { isWriting } from '../shared/is-writing.ts';
import type { Sound } from './sound-context.tsx';

/** Whether letters belong to what has the focus: a field, or a list that finds its entries by their letters. */
function takesLetters(target: EventTarget | null): boolean {
  const list = 'select, [role="menu"], [role="listbox"]';
  return isWriting(target) || (target instanceof Element && target.closest(list) !== null);
}

/** Whether a letter means something to what has the focus: in a line that is being written, L is the left hand. */
function isInLine(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('[data-part="line-editor"]') !== null;
}

function barsOf({ lesson, choice }: Sound): number {
  const exercise = lesson?.exercises.find((each) => each.number === choice.exercise);
  return exercise?.parts[0]?.pattern.bars.length ?? 0;
}

function actionOf(event: KeyboardEvent, sound: Sound): (() => void) | null {
  if (event.ctrlKey || event.metaKey) return null;
  const loop = () => sound.choose({ bar: nextLoop(sound.choice.bar, barsOf(sound)) });
  if (event.altKey) return event.code === 'KeyL' ? loop : null;
  const key = event.key.toLowerCase();
  if (key === 'p') return sound.toggle;
  if (key === 'c') return sound.compare;
  return key === 'l' && !isInLine(event.target) ? loop : null;
}

/** Listens while the ledge is there. */
export function useLedgeKeys(sound: Sound): void {
  const latest = useRef(sound);
  latest.current = sound;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const action = takesLetters(event.target) ? null : actionOf(event, latest.current);
      if (!action) return;
      event.preventDefault();
      action();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
