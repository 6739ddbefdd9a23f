/**
 * The mark that asks a voice for a stroke: the inverse of core's `strikeOf`.
 */
import { strikeOf } from '../kit/strike.ts';
import type { Voice } from '../kit/voice.ts';
import { MARKS, type Mark } from '../rhythm/cell.ts';
import type { PlacedStroke } from './placed.ts';

type Touch = Pick<PlacedStroke, 'voice' | 'articulation' | 'accent' | 'ghost'>;

function exactMark(home: Voice, wanted: Touch): Mark | null {
  const found = MARKS.find((mark) => {
    const strike = strikeOf(home, mark);
    return (
      strike !== null &&
      strike.voice === wanted.voice &&
      strike.articulation === wanted.articulation &&
      strike.accent === wanted.accent &&
      strike.ghost === wanted.ghost
    );
  });
  return found ?? null;
}

/**
 * The mark for a stroke written under `home`. Where no mark says everything, the ghost goes first, then the
 * articulation; null when the voice cannot be written there at all.
 */
export function markOf(home: Voice, stroke: Touch): Mark | null {
  return (
    exactMark(home, stroke) ??
    exactMark(home, { ...stroke, ghost: false }) ??
    exactMark(home, { ...stroke, ghost: false, articulation: 'normal' })
  );
}
