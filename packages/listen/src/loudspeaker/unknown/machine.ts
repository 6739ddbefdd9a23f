/**
 * Voices that a machine plays beside a person, in a take of which nobody said that a loudspeaker sounds: what sounds at their
 * places is the same to a fraction of a millisecond, bar after bar, while another limb plays as people do. Where nobody does,
 * the take is a recording of a machine, and as honest as a person's.
 *
 * Conventions: seconds from the take's first sample; the sound is of ANALYSIS_RATE.
 */
import { groupBy, type Voice } from '@shedbook/core';
import { median, medianDeviation } from '@shedbook/signal';
import type { TrackedBar } from '../../align/match-bar.ts';
import type { HeardStroke } from '../../decide/heard-stroke.ts';
import { softVoices } from '../../decide/left-over.ts';
import type { Place } from '../../decide/places.ts';
import { ANALYSIS_RATE } from '../../signal/bands.data.ts';
import { evened } from './evened.ts';
import { type ExactBars, exactBars } from './exact-bars.ts';
import { type MachineShare, machineShares } from './shares.ts';

/**
 * A voice is a machine's where what is the same at all of its places has so many times the power that chance gives, and is so
 * much of what comes with it. Of limbs that were played, with a machine 10 to 30 dB under them, none had more than 0.2 of it,
 * but for feathered bass drums that hardly sound above others at all; of those that a machine alone played nearly all had over
 * half and most over 0.75 (200 takes of two kits, on which this was set).
 */
const OVER_CHANCE = 1.5;
const OVER_CHANCE_BASS = 2.5;
const MOSTLY = 0.5;
/**
 * A limb is a person's of whose sound no more is a machine's, and whose strokes lie so far from the machine's in the middle: of
 * the product's own recordings it is 0.5 and more, and 0.4 ms at most; a hand's beside a machine that strikes with it 0.6 to 4 ms.
 */
const HARDLY = 0.3;
const HUMAN_SECONDS = 0.0008;
/** Fewer strokes tell nothing of a limb. */
const FEWEST = 6;
/**
 * A machine is looked for where a voice is so much softer than asked beside the others, in dB: what it plays alone lacks what
 * the student adds to all the others, 3 dB where both are as loud, and more the softer the machine is.
 */
const SOFTER_DB = 2;

/** A take whose bars are known, and what was heard at its places. */
export interface PlacedTake {
  readonly sound: Float32Array;
  readonly bars: readonly TrackedBar[];
  readonly places: readonly Place[];
  readonly strokes: readonly HeardStroke[];
}

/** A machine's sound may come later or earlier than what is played with it, in steps of this, in seconds. */
const STEP_SECONDS = 0.02;

const secondsOf = ({ takeBar, expected }: Place, { fromSeconds, barSeconds }: ExactBars) =>
  fromSeconds + barSeconds * (takeBar + expected.position);

/** How late the strokes of each voice are on the machine's bars, in seconds. */
function latenessIn({ strokes }: PlacedTake, bars: ExactBars): ReadonlyMap<Voice, readonly number[]> {
  const late = new Map<Voice, number[]>();
  for (const { voice, timeSeconds, place } of strokes)
    if (place) late.set(voice, [...(late.get(voice) ?? []), timeSeconds - secondsOf(place, bars)]);
  return late;
}

/** What is a machine's of each voice, looked for where its strokes were heard. */
function sharesIn(
  { sound, places }: PlacedTake,
  bars: ExactBars,
  late: ReadonlyMap<Voice, readonly number[]>,
) {
  const endSeconds = sound.length / ANALYSIS_RATE;
  const stepOf = (voice: Voice) => Math.round(median(late.get(voice) ?? [0]) / STEP_SECONDS);
  const sharesAt = (step: number) => {
    const due = places.map((place) => ({
      voice: place.expected.voice,
      levelDb: place.expected.stroke.levelDb,
      seconds: secondsOf(place, bars) + step * STEP_SECONDS,
    }));
    return machineShares(
      sound,
      due.filter(({ seconds }) => seconds < endSeconds),
    );
  };
  const steps = groupBy([...late.keys()], stepOf);
  return [...steps].flatMap(([step, voices]) =>
    [...sharesAt(step)].filter(([voice]) => voices.includes(voice)),
  );
}

const isMachine = (voice: Voice, { overChance, share }: MachineShare) =>
  overChance >= (voice === 'bass' ? OVER_CHANCE_BASS : OVER_CHANCE) && share >= MOSTLY;

/** The voices that only a machine plays; none where nobody, or nothing but a machine, plays. */
export function machineVoices(take: PlacedTake): ReadonlySet<Voice> {
  if (softVoices(take.strokes, SOFTER_DB).size === 0) return new Set();
  const bars = exactBars(evened(take.sound), take.bars);
  if (!bars) return new Set();
  const late = latenessIn(take, bars);
  const shares = sharesIn(take, bars, late);
  const isHuman = ([voice, { share }]: (typeof shares)[number]) => {
    const own = late.get(voice) ?? [];
    return share <= HARDLY && own.length >= FEWEST && medianDeviation(own) > HUMAN_SECONDS;
  };
  if (!shares.some(isHuman)) return new Set();
  const due = groupBy(take.places, ({ expected }) => expected.voice);
  const isBelieved = (voice: Voice) => 2 * (late.get(voice)?.length ?? 0) >= (due.get(voice)?.length ?? 0);
  return new Set(
    shares.flatMap(([voice, share]) => (isBelieved(voice) && isMachine(voice, share) ? [voice] : [])),
  );
}
