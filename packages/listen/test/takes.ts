/** Takes for tests of hearing: what hands make of written strokes, played on a kept kit. */
import { Hertz, type Lesson, parseLesson, Seconds, type Stroke, seededRandom } from '@shedbook/core';
import { type Kit, render } from '@shedbook/sound';
import { keptKit } from '../../../internal/testing/kept-kit.mjs';

/** Samples a second of every take. */
export const RATE = Hertz(44_100);

/** The built-in kit. */
export const kit: Kit = keptKit({ sampleRateHz: RATE });

/** A swing lesson of all four limbs. */
export function swingOf(exercises: readonly string[], { bpm = 100, more = '' } = {}): Lesson {
  const { lesson, problems } = parseLesson(
    `title: Swing
tempo: ${bpm}
feel: triplet
exercises: [${exercises.map((each) => `"${each}"`).join(', ')}]
groove: {ride: "x x.x x x.x", hihat-foot: ". x . x", bass: "x x x x"}
${more}`,
    'swing.lesson.yaml',
  );
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** How hands play: how late as a whole, and over how many seconds their strokes scatter, half to each side. */
export interface Hands {
  readonly seed: string;
  readonly lateSeconds: number;
  readonly spreadSeconds: number;
}

/** Strokes as hands place them, in order. */
export function handsOf(
  strokes: readonly Stroke[],
  { seed, lateSeconds, spreadSeconds }: Hands,
): readonly Stroke[] {
  const random = seededRandom(seed);
  return strokes
    .map((stroke) => ({
      ...stroke,
      timeSeconds: Seconds(stroke.timeSeconds + lateSeconds + (random.next() - 0.5) * spreadSeconds),
    }))
    .toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** Strokes on a kit, both channels as one. */
export function sounded(
  strokes: readonly Stroke[],
  durationSeconds: number,
  on: Pick<Parameters<typeof render>[1], 'kit'> = { kit },
): Float32Array {
  const { left, right } = render({ strokes, durationSeconds: Seconds(durationSeconds) }, on);
  return left.map((sample, i) => sample + right[i]!);
}

/** The same on a kit of its own, which `hands` name. */
export function soundedBy(hands: Hands, strokes: readonly Stroke[], durationSeconds: number): Float32Array {
  const own = keptKit({ sampleRateHz: RATE, seed: hands.seed });
  return sounded(handsOf(strokes, hands), durationSeconds, { kit: own });
}
