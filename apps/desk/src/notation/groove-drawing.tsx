/** The groove as one drawing, all limbs together on five lines. */
import { barPart, type Lesson, notateBar } from '@shedbook/core';
import { BarsDrawing } from './exercise-drawing.tsx';

/** Bars of the longest part; shorter ones go round under it. */
export function GrooveDrawing({ lesson: { groove, meter } }: { readonly lesson: Lesson }) {
  const bars = Math.max(1, ...groove.map((part) => part.pattern.bars.length));
  const notated = Array.from({ length: bars }, (_, bar) =>
    notateBar(
      groove.map(({ voice, pattern }) => barPart(voice, pattern, bar % pattern.bars.length)),
      meter,
    ),
  );
  return <BarsDrawing bars={notated} staff="five lines" sticking={false} repeats />;
}
