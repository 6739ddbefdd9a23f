/** The bar and the beat that are heard, as numbers that can be read from the throne. */

import { beatAt } from '@shedbook/playing';
import { useEffect, useRef } from 'react';
import styles from './ledge-count.module.css';
import { useSound } from './sound-context.tsx';

/** The count; hidden from screen readers, which would never stop talking. */
export function LedgeCount() {
  const { player, status } = useSound();
  const shown = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (status !== 'playing') return;
    let frame = 0;
    const draw = () => {
      frame = requestAnimationFrame(draw);
      const heard = player.heard();
      const beat = heard && beatAt(heard.program, heard.place);
      const text = beat ? `${Math.max(0, beat.bar) || '–'} · ${beat.beat}` : '';
      if (shown.current && shown.current.textContent !== text) shown.current.textContent = text;
    };
    draw();
    return () => cancelAnimationFrame(frame);
  }, [player, status]);
  return <span className={styles.count} data-part="ledge-count" ref={shown} aria-hidden="true" />;
}
