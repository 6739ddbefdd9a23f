/**
 * A long roll of a drum in a take: its bounces are no strokes, and told one by one they hide what is played with it and say
 * a pulse of their own.
 *
 * Conventions: seconds of the take; presence as logits.
 */

import type { HeardEvent } from '../detect/events.ts';
import { HEARD_COUNT, HEARD_VOICES } from '../network/heard-voices.data.ts';
import { kindOf } from './observations.ts';

/** Bounces follow each other as fast as this; no hand strikes two single strokes so fast. */
const APART_SECONDS = 0.085;
/** So many one after the other are a roll: a drag or a ruff has fewer. */
const FEWEST = 6;
/** What is so much louder than the bounces before it, in dB, is a stroke again. */
const LOUDER_DB = 5;
/** Bounces that a stroke is compared with. */
const BESIDE = 4;

const DRUM = kindOf('snare');
const DRUMS = HEARD_VOICES.flatMap((voice, index) => (kindOfHeard(voice) === DRUM ? [index] : []));
const OTHERS = HEARD_VOICES.flatMap((voice, index) =>
  voice === 'click' || kindOfHeard(voice) === DRUM ? [] : [index],
);

function kindOfHeard(voice: (typeof HEARD_VOICES)[number]): number {
  return voice === 'click' ? -1 : kindOf(voice);
}

interface Told {
  readonly event: HeardEvent;
  /** The loudest drum in it, dB re full scale; null where there is none. */
  readonly drumDb: number | null;
  /** Whether something else is struck in it. */
  readonly hasOther: boolean;
}

function toldOf(event: HeardEvent, index: number, free: Float64Array): Told {
  const logit = (voice: number) => free[index * HEARD_COUNT + voice]!;
  const drums = DRUMS.filter((voice) => logit(voice) > 0);
  return {
    event,
    drumDb: drums.length === 0 ? null : Math.max(...drums.map((voice) => event.levelDb[voice]!)),
    hasOther: OTHERS.some((voice) => logit(voice) > 0),
  };
}

/** Nothing at all, as a logit. */
const NOTHING = -8;

/** What is left of a take without the bounces of its long rolls. */
export interface WithoutBounces {
  readonly events: readonly HeardEvent[];
  /** Which of the events are another limb's in the midst of a roll: of a drum they tell nothing. */
  readonly amid: readonly boolean[];
}

/** The events of a take but for the bounces of long rolls. @param free evidence whatever is written, as by `hearFreely` */
export function withoutBounces(events: readonly HeardEvent[], free: Float64Array): WithoutBounces {
  const told = events.map((event, index) => toldOf(event, index, free));
  const kept: HeardEvent[] = [];
  const amid: boolean[] = [];
  let run: Told[] = [];
  const close = () => {
    const isRoll = run.length >= FEWEST;
    run.forEach((one, index) => {
      const before = run.slice(Math.max(0, index - BESIDE), index);
      const isStroke =
        !isRoll || before.every(({ drumDb }) => (one.drumDb ?? -200) > (drumDb ?? -200) + LOUDER_DB);
      if (!isStroke && !one.hasOther) return;
      kept.push(one.event);
      amid.push(!isStroke);
    });
    run = [];
  };
  for (const one of told) {
    const last = run.at(-1);
    if (last && one.event.timeSeconds - last.event.timeSeconds > APART_SECONDS) close();
    run.push(one);
  }
  close();
  return { events: kept, amid };
}

/** Evidence in which what another limb plays in the midst of a roll is no drum. */
export function withoutDrumsAmid(free: Float64Array, amid: readonly boolean[]): Float64Array {
  return free.map((logit, at) => {
    const isDrum = DRUMS.includes(at % HEARD_COUNT);
    return isDrum && amid[Math.floor(at / HEARD_COUNT)] ? Math.min(logit, NOTHING) : logit;
  });
}
