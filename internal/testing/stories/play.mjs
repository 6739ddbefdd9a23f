/**
 * Students of stories: what they play of an exercise, stroke by stroke, with everything that goes wrong.
 *
 * Conventions: seconds from the first bar line; milliseconds positive late; a place is `beat.slot`, from 1. Changes are
 * data: `exercise` plays another one; `only` and `leaves` name voices, `leavesAt` voices and places or bars; `adds`
 * strokes; `on` moves a voice to another drum; `straight` puts swung off-beats into the middle of the beat, or
 * swung sixteenths into that of half a beat; `beatsLate`
 * moves everything or a voice; `lateMs` and `spreadMs` hold for all, or by voice; `lateAt` for a voice at a place,
 * or in bars or rounds (from 0), as `leavesAt` has them;
 * `tempo` is a ratio, `drift` the change of tempo through a round, both beside the click or the tempo asked; `louderDb`
 * by voice, `ghostsDb` for the soft strokes of a voice that has loud ones; `swung` puts straight off-beats on the last
 * triplet, or every second sixteenth on that of half a beat; `rests` names bars that are not played, in one round or in each; `pause` stops for some beats after a bar of a
 * round, and `skips` leaves a bar of it out, so that what follows comes later or sooner; `sounds` random strokes a round,
 * as of somebody who talks; `bars` names the bars that come instead of those of the form, one after the other.
 */
import { isVoice, perform, seededRandom } from '@shedbook/core';

/** A normal deviate. */
function normal(random) {
  const u = Math.max(1e-12, random.next());
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * random.next());
}

const by = (value, voice, otherwise = 0) =>
  typeof value === 'object' && value !== null ? (value[voice] ?? otherwise) : (value ?? otherwise);

const placeOf = ({ written }) => `${written.beat}.${written.slot}`;

function isLeft({ only, leaves = [], leavesAt = [], round }, stroke) {
  if (only && !only.includes(stroke.voice)) return true;
  if (leaves.includes(stroke.voice)) return true;
  return leavesAt.some(
    ({ voice, places, bars, rounds, softerThanDb = Number.POSITIVE_INFINITY }) =>
      voice === stroke.voice &&
      stroke.levelDb < softerThanDb &&
      (!rounds || rounds.includes(round)) &&
      (!places || places.includes(placeOf(stroke))) &&
      (!bars || bars.includes(stroke.written.bar)),
  );
}

/** Whether a stroke is a swung off-beat: the last of two or three slots whose middle is empty. */
function isOffBeat({ slots, written }) {
  return slots > 1 && slots <= 3 && written.slot === slots;
}

/** Whether a stroke is a straight off-beat: the second half of its beat. */
function isHalf({ slots, written }) {
  return slots % 2 === 0 && written.slot === slots / 2 + 1;
}

/** Whether a stroke is every second sixteenth. */
function isSecond({ slots, written }) {
  return slots === 4 && written.slot % 2 === 0;
}

const SOFT_DB = 6;

/** What a soft stroke of a voice that has loud ones is louder by. */
function ghostDb(stroke, written, { ghostsDb = 0 }) {
  const loudest = Math.max(
    ...written.flatMap(({ voice, levelDb }) => (voice === stroke.voice ? [levelDb] : [])),
  );
  return stroke.levelDb < loudest - SOFT_DB ? ghostsDb : 0;
}

/** Whether a bar of a round is not played. */
function isRest({ rests = [], skips }, index, bar) {
  if (skips?.round === index && skips.bar === bar) return true;
  return rests.some(({ round, bars }) => (round === undefined || round === index) && bars.includes(bar));
}

/** By how many seconds what follows a bar of a round comes later. */
function delayAfter({ pause, skips }, index, bar, { barSeconds, beatSeconds }) {
  const paused = pause?.round === index && bar > pause.bar ? pause.beats * beatSeconds : 0;
  const skipped = skips?.round === index && bar > skips.bar ? barSeconds : 0;
  return paused - skipped;
}

function secondsOf(stroke, changes, beat, roundSeconds) {
  const { straight, beatsLate, tempo = 1, drift = 0 } = changes;
  let at = stroke.timeSeconds;
  const isStraight = straight === true || (Array.isArray(straight) && straight.includes(stroke.voice));
  if (isStraight && isOffBeat(stroke)) at = Math.floor(at / beat + 1e-6) * beat + beat / 2;
  if (straight === 'sixteenths' && isSecond(stroke))
    at = Math.floor((at / beat) * 2 + 1e-6) * (beat / 2) + beat / 4;
  if (changes.swung === true && isHalf(stroke)) at += beat / 6;
  if (changes.swung === 'sixteenths' && isSecond(stroke)) at += beat / 12;
  at += by(beatsLate, stroke.voice) * beat;
  // a tempo that changes steadily by `drift` through the round
  const share = at / roundSeconds;
  return (roundSeconds * (share - (drift * share * share) / 2)) / tempo;
}

function addedStrokes(strokes, { adds = [] }, bars) {
  return adds.flatMap(({ voice, place, inBars }) => {
    const [beat, slot] = place.split('.').map(Number);
    return Array.from({ length: bars }, (_, index) => index + 1)
      .filter((bar) => !inBars || inBars.includes(bar))
      .flatMap((bar) => {
        const near = strokes.find(
          ({ written }) => written.bar === bar && written.beat === beat && written.slot === 1,
        );
        return near ? [{ ...near, voice, written: { bar, beat, slot }, addSlots: slot - 1, levelDb: 0 }] : [];
      });
  });
}

/** The strokes of a round with other bars in its bars: `bars` names those that come, one after the other. */
function inBars(strokes, { bars }, barSeconds) {
  if (!bars) return strokes;
  return bars.flatMap((from, index) =>
    strokes
      .filter(({ written }) => written.bar === from)
      .map((stroke) => ({ ...stroke, timeSeconds: stroke.timeSeconds + (index + 1 - from) * barSeconds })),
  );
}

/** One time through the form as a student plays it, from its own bar line. */
export function playRound(lesson, { exercise, form, bpm, layers }, changes, seed) {
  const random = seededRandom(seed);
  const once = { ...form, repeat: 1, countInBars: 0 };
  const asked = { exercise: changes.exercise ?? exercise, form: once, bpm, ...(layers ? { layers } : {}) };
  const { strokes, bars, durationSeconds } = perform(lesson, asked);
  const barsPlayed = changes.bars?.length ?? bars.length;
  const written = inBars(
    strokes.filter(({ voice }) => isVoice(voice)),
    changes,
    durationSeconds / bars.length,
  );
  // a beat of 12/8 is three eighths, and not a quarter
  const beatSeconds = durationSeconds / (bars.length * lesson.meter.beats.length);
  const added = addedStrokes(written, changes, bars.length).map((stroke) => ({
    ...stroke,
    timeSeconds: stroke.timeSeconds + (stroke.addSlots * 20) / bpm,
  }));
  const played = [...written.filter((stroke) => !isLeft(changes, stroke)), ...added].map((stroke) => {
    const { voice } = stroke;
    const place = changes.lateAt?.find(
      (each) =>
        each.voice === voice &&
        (each.places?.includes(placeOf(stroke)) ?? true) &&
        (each.bars?.includes(stroke.written.bar) ?? true) &&
        (each.rounds?.includes(changes.round) ?? true),
    );
    const ms = by(changes.lateMs, voice) + (place?.ms ?? 0) + by(changes.spreadMs, voice) * normal(random);
    return {
      ...stroke,
      voice: changes.on?.[voice] ?? voice,
      timeSeconds: secondsOf(stroke, changes, beatSeconds, durationSeconds) + ms / 1000,
      levelDb:
        stroke.levelDb +
        by(changes.louderDb, voice) +
        ghostDb(stroke, written, changes) +
        (changes.spreadDb ?? 0) * normal(random),
    };
  });
  const voices = [...new Set(written.map(({ voice }) => voice))];
  const sounds = Array.from({ length: changes.sounds ?? 0 }, () => ({
    ...written[0],
    voice: voices[random.below(voices.length)],
    timeSeconds: random.next() * durationSeconds,
    levelDb: -10,
  }));
  return {
    strokes: changes.silent ? [] : [...played, ...sounds],
    durationSeconds: (durationSeconds * barsPlayed) / bars.length,
    bars: barsPlayed,
  };
}

/** All rounds of a story: strokes in seconds from the first bar line, and the rounds with their tempi. */
export function playStory(lesson, form, story) {
  const {
    exercise,
    bpm = lesson.tempo.startBpm,
    layers,
    rounds = 2,
    ladder = 0,
    play = {},
    seed = story.name,
  } = story;
  const takes = [];
  let start = 0;
  const strokes = [];
  for (let round = 0; round < rounds; round += 1) {
    const tempo = bpm + ladder * round;
    const asked = { exercise, form, bpm: tempo, layers };
    const silent = (story.silentRounds ?? []).includes(round);
    const played = playRound(
      lesson,
      asked,
      silent ? { silent: true } : { ...play, round },
      `${seed} ${round}`,
    );
    const barSeconds = played.durationSeconds / played.bars;
    const lengths = { barSeconds, beatSeconds: barSeconds / lesson.meter.beats.length };
    for (const stroke of played.strokes) {
      const { bar } = stroke.written;
      const late = delayAfter(play, round, bar, lengths);
      if (!isRest(play, round, bar))
        strokes.push({ ...stroke, timeSeconds: start + late + stroke.timeSeconds });
    }
    takes.push({ startSeconds: start, bpm: tempo, durationSeconds: played.durationSeconds });
    start += delayAfter(play, round, played.bars + 1, lengths);
    // without a click, who is slower takes longer
    start += story.click
      ? played.durationSeconds
      : played.durationSeconds / (play.tempo ?? 1) - ((play.drift ?? 0) * played.durationSeconds) / 2;
  }
  return {
    strokes: strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds),
    rounds: takes,
    seconds: start,
  };
}
