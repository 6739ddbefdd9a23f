/** The bar and the beat that are heard, as they go by; hidden from screen readers, which would never stop talking. */
import { beatAt } from '@shedbook/playing';
import { useEffect, useRef } from 'react';
import { useSound } from './sound-context.tsx';

/** Where the sound is. */
export interface BeatHeard {
  /** Bar from 1; 0 or less while it is counted in. */
  readonly bar: number;
  /** Beat of the bar, from 1. */
  readonly beat: number;
}

interface HeardBeatProps {
  readonly part: string;
  readonly className: string | undefined;
  /** What is shown of it. */
  readonly says: (heard: BeatHeard) => string;
}

/** The beat; empty while nothing sounds. */
export function HeardBeat({ part, className, says }: HeardBeatProps) {
  const { player, status } = useSound();
  const shown = useRef<HTMLSpanElement>(null);
  const latest = useRef(says);
  latest.current = says;
  useEffect(() => {
    if (status !== 'playing') return;
    let frame = 0;
    const show = (text: string) => {
      if (shown.current && shown.current.textContent !== text) shown.current.textContent = text;
    };
    const draw = () => {
      frame = requestAnimationFrame(draw);
      const heard = player.heard();
      const beat = heard && beatAt(heard.program, heard.place);
      show(beat ? latest.current(beat) : '');
    };
    draw();
    return () => {
      cancelAnimationFrame(frame);
      show('');
    };
  }, [player, status]);
  return <span className={className} data-part={part} ref={shown} aria-hidden="true" />;
}
