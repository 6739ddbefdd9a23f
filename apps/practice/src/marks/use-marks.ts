/** Drawing what is heard on the pictures of the stand. */
import { useEffect, useMemo, useRef } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import type { PracticeSession } from '../session/practice-session.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { type Drawing, Pen } from './pen.ts';

/** After a bar's end and the latency, in seconds: then a stroke that has not come is missing. */
const WAIT_SECONDS = 0.3;

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
        if (event.kind === 'stretch begins') pen.stretch();
        if (event.kind === 'strokes') for (const each of event.strokes) pen.stroke(each, event.task);
      }),
    [hearing, pen],
  );
  useEffect(
    () =>
      session.listen((event) => {
        if (event.kind !== 'bar' || hearing.ear.state().phase !== 'on') return;
        const { program, bar, startSeconds, endSeconds } = event;
        const latency = hearing.ear.state().latencyMs / 1000;
        const now = latest.current.session.player.context().currentTime;
        const wait = endSeconds - now + latency + WAIT_SECONDS;
        setTimeout(() => pen.over(program, bar, startSeconds), wait * 1000);
      }),
    [hearing, pen, session.listen],
  );
}
