/** Going on by itself: after so many times through, the next exercise follows without a gap. */
import { exerciseBeside, type Lesson } from '@shedbook/core';
import { useEffect, useRef, useState } from 'react';
import type { Sound } from '../hear/sound-context.tsx';

/** Milliseconds between looks at what is heard; a form lasts seconds. */
const LOOK_MS = 60;

/** The number of times through before the next exercise, 0 for never, and a way to choose it. */
export function useNextAfter(sound: Sound, lesson: Lesson): readonly [number, (loops: number) => void] {
  const [loops, setLoops] = useState(0);
  const latest = useRef({ sound, loops, lesson });
  latest.current = { sound, loops, lesson };
  const seen = useRef({ exercise: 0, firstPass: 0, queued: false });
  useEffect(() => {
    if (sound.status !== 'playing') {
      seen.current = { exercise: 0, firstPass: 0, queued: false };
      return;
    }
    const look = () => {
      const heard = latest.current.sound.player.heard();
      const exercise = heard?.program.exercise;
      if (!heard || exercise === null || exercise === undefined) return;
      if (exercise !== seen.current.exercise) {
        seen.current = { exercise, firstPass: heard.pass, queued: false };
        latest.current.sound.choose({ exercise });
      }
      if (latest.current.sound.choice.bar !== null) return;
      const next = exerciseBeside(latest.current.lesson, exercise, 1);
      const last = heard.pass - seen.current.firstPass >= latest.current.loops - 1;
      if (latest.current.loops > 0 && last && !seen.current.queued && next !== null) {
        seen.current.queued = true;
        latest.current.sound.queue(next);
      }
    };
    const timer = setInterval(look, LOOK_MS);
    return () => clearInterval(timer);
  }, [sound.status]);
  return [loops, setLoops];
}
