/** The scene of a performance: page and ball follow whoever plays. */
import { Bpm, type Lesson, Seconds } from '@shedbook/core';
import { followExercise, landingsOf, movedClock } from '@shedbook/playing';
import type { Recorded } from './recorded.ts';
import type { FrameRate, PlayedScene, Unplaced } from './scene.ts';

/** Before a performance whose recording begins with its first stroke, the page stands still so long. */
const LEAD_SECONDS = 1;

/** The scene of a performance, without its first frame. @throws RangeError where nothing of it was followed */
export function recordedScene(
  lesson: Lesson,
  recorded: Recorded,
  { speed, framesPerSecond }: { readonly speed: number; readonly framesPerSecond: FrameRate },
): Unplaced<PlayedScene> {
  const { exercise, sounding } = recorded;
  const { form, bpm, asked, played } = followExercise(lesson, recorded);
  const moved = { fromSeconds: sounding.fromSeconds, speed };
  const seconds = (sounding.toSeconds - sounding.fromSeconds) / speed;
  const first = played.strokes[0]?.timeSeconds ?? 0;
  const lead = Math.max(0, LEAD_SECONDS - (first - sounding.fromSeconds) / speed);
  const leadFrames = Math.round(lead * framesPerSecond);
  return {
    ...{ kind: 'exercise', lesson, exercise, form, stages: [], leadFrames },
    bpm: Bpm(Math.round(bpm * speed)),
    ...{ program: played.program, asked, formBars: played.formBars },
    clock: movedClock(played.clock, moved),
    strokes: played.strokes.map((stroke) => ({
      ...stroke,
      timeSeconds: Seconds((stroke.timeSeconds - sounding.fromSeconds) / speed),
    })),
    durationSeconds: Seconds(seconds),
    landings: landingsOf(played.program),
    frames: leadFrames + Math.ceil(seconds * framesPerSecond - 1e-9),
    shown: { recorded, ...sounding, speed },
  };
}
