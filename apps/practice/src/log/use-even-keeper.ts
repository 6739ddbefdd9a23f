/** Keeps how even each voice was while one is heard, stretch by stretch. */
import { originOf } from '@shedbook/coach';
import type { Voice } from '@shedbook/core';
import { momentFrom } from '@shedbook/stand';
import { useEffect, useRef } from 'react';
import type { Hearing, JudgedLoop } from '../ear/hearing.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { type EvenStretch, keepEven } from './even-store.ts';

/** The stretch with one more round. */
function withRound(stretch: EvenStretch, { spreadsMs }: JudgedLoop): EvenStretch {
  const voices = Object.keys(spreadsMs) as Voice[];
  const more = voices.map((voice) => [voice, [...(stretch.spreadsMs[voice] ?? []), spreadsMs[voice]]]);
  return { ...stretch, spreadsMs: { ...stretch.spreadsMs, ...Object.fromEntries(more) } };
}

/** Keeps it. */
export function useEvenKeeper(hearing: Hearing): void {
  const { pack } = usePracticeSession();
  const open = useRef<EvenStretch | null>(null);
  useEffect(
    () =>
      hearing.listen((event) => {
        if (event.kind !== 'judged') return;
        const { judged } = event;
        const exercise = pack.lesson.exercises.find(({ number }) => number === judged.task.exercise);
        const fresh = {
          ...{ id: judged.stretch, startedAt: momentFrom(new Date()), spreadsMs: {} },
          ...originOf(pack, exercise ?? null),
        };
        const stretch = open.current?.id === judged.stretch ? open.current : fresh;
        open.current = withRound(stretch, judged);
        void keepEven(open.current).catch(() => undefined);
      }),
    [hearing, pack],
  );
}
