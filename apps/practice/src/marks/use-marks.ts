/** Drawing what is heard on the pictures of the stand. */
import { useEffect, useMemo, useRef } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import type { PracticeSession } from '../session/practice-session.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { type Drawing, Pen } from './pen.ts';

/** Draws while one is heard. */
export function useMarks(hearing: Hearing, session: PracticeSession): void {
  const pictures = usePictures();
  const latest = useRef<Drawing>({ session, pictures });
  latest.current = { session, pictures };
  const pen = useMemo(() => new Pen(hearing, () => latest.current), [hearing]);
  useEffect(() => () => pen.clear(), [pen, pictures]);
  useEffect(
    () =>
      hearing.listen((event) => {
        if (event.kind === 'stretch begins') pen.stretch(event.stretch);
        if (event.kind === 'told') pen.told(event.told, event.stretch);
        if (event.kind === 'strokes') for (const each of event.strokes) pen.stroke(each, event.task);
      }),
    [hearing, pen],
  );
  useEffect(
    () =>
      hearing.ear.subscribe(() => {
        if (hearing.ear.state().phase === 'off') pen.rest();
      }),
    [hearing, pen],
  );
  useEffect(
    () =>
      session.listen((event) => {
        if (event.kind === 'bar') pen.bar(event.program);
      }),
    [pen, session.listen],
  );
}
