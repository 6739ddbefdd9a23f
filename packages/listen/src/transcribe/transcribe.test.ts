import { readFileSync } from 'node:fs';
import {
  Bpm,
  formatFeel,
  formatPattern,
  isVoice,
  type Lesson,
  parseLesson,
  perform,
  Seconds,
  seededRandom,
  starterText,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { RATE, sounded } from '../../test/takes.ts';
import { TakeListener } from '../listen.ts';
import { lessonOfTranscript } from './lesson-text.ts';
import type { StruckVoice } from './struck.ts';
import { type Known, type Transcript, transcribeNotes } from './transcribe.ts';

const DEMO = new URL('../../../../demo/', import.meta.url);

function lessonNamed(name: string): Lesson {
  const path = new URL(`${name}.lesson.yaml`, DEMO);
  return parseLesson(readFileSync(path, 'utf8'), path.pathname).lesson as Lesson;
}

/** An exercise played four times by somebody whose strokes scatter by 8 ms and 1.5 dB and whose tempo drifts. */
function play(lesson: Lesson, exercise: number, bpm: number, drift = 0.03) {
  const own = lesson.exercises[exercise - 1]!.parts[0]!.pattern.bars.length;
  const sections = [{ play: 'pattern' as const, bars: 4 * own, ending: null }];
  const form = { name: 'four times', sections, repeat: 1, countInBars: 0 };
  const performance = perform(lesson, { exercise, form, bpm: Bpm(bpm) });
  const random = seededRandom(`hear ${lesson.title} ${exercise}`);
  const scatter = () => Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
  const strokes = performance.strokes.flatMap(({ voice, timeSeconds, levelDb }): StruckVoice[] => {
    if (!isVoice(voice)) return [];
    const drifted = timeSeconds * (1 + (drift * timeSeconds) / performance.durationSeconds);
    return [
      { voice, timeSeconds: Seconds(1.3 + drifted + 0.008 * scatter()), levelDb: levelDb + 1.5 * scatter() },
    ];
  });
  const ordered = strokes.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  return { strokes: ordered, performance, bars: 4 * own };
}

/** A bar by its places: beat and twelfths of it. */
type Places = readonly string[];

function writtenIn({ strokes }: ReturnType<typeof play>['performance'], of: Voice, bar: number): Places {
  return strokes
    .filter(({ voice, written }) => voice === of && written.bar === bar)
    .map(({ written, slots }) => `${written.beat}:${((written.slot - 1) * 12) / slots}`);
}

function heardIn({ parts }: Transcript, of: Voice, bar: number): Places {
  const cells = parts.find(({ voice }) => voice === of)?.pattern.bars[bar - 1] ?? [];
  return cells.flatMap((cell, beat) =>
    struckSlots(cell).map((slot) => `${beat + 1}:${(slot * 12) / cell.marks.length}`),
  );
}

function heard(strokes: readonly StruckVoice[], known: Known = {}): Transcript {
  const { transcript, refusal } = transcribeNotes(strokes, known);
  if (!transcript) throw new Error(refusal.fact);
  return transcript;
}

const CASES = [
  { name: 'first-swing', feel: /^triplet$/, meter: '4/4' },
  { name: 'jazz-waltz', feel: /^(2\.[6-9]|3(\.[01])?):1$/, meter: '3/4' },
  { name: 'bossa', feel: /^even$/, meter: '4/4' },
  { name: 'funk', feel: /^even$/, meter: '4/4' },
  // A shuffle is written in 4/4 with triplets where nobody asks for 12/8: the same beats and slots.
  { name: 'shuffle', feel: /^triplet$/, meter: '4/4' },
] as const;

describe('writing down what was played', () => {
  it.each(CASES)(
    '[LI71] writes every bar of every voice of $name as it was played',
    ({ name, feel, meter }) => {
      const lesson = lessonNamed(name);
      const wrong: string[] = [];
      let bars = 0;
      for (const exercise of [2, 5, 9]) {
        const played = play(lesson, exercise, lesson.tempo.startBpm * 1.1);
        const found = heard(played.strokes);
        expect(found.meter.text).toBe(meter);
        expect(formatFeel(found.feel)).toMatch(feel);
        for (const voice of new Set(played.strokes.map((stroke) => stroke.voice)))
          for (let bar = 1; bar <= played.bars; bar += 1) {
            bars += 1;
            const [is, due] = [heardIn(found, voice, bar), writtenIn(played.performance, voice, bar)];
            if (is.join() !== due.join()) wrong.push(`${exercise} ${voice} ${bar}: ${is} for ${due}`);
          }
      }
      // definition: the score that was performed
      expect(wrong).toEqual([]);
      expect(bars).toBeGreaterThan(30);
    },
  );

  // definition: the grooves that lessons start from, in the meter that their texts have
  it.each([
    { name: 'six-eight', meter: '6/8' },
    { name: 'twelve-eight', meter: '12/8' },
    { name: 'rock-eighths', meter: '4/4' },
    { name: 'jazz-waltz', meter: '3/4' },
  ] as const)('[LI4400] hears that $name is in $meter', ({ name, meter }) => {
    const lesson = parseLesson(starterText(name, name), name).lesson as Lesson;
    for (const bpm of [lesson.tempo.startBpm, lesson.tempo.goalBpm ?? 120]) {
      const found = heard(play(lesson, 1, bpm).strokes);
      expect(found.meter.text).toBe(meter);
      // definition: as fast as it was played, slowing by 3 % from start to end
      expect(Math.abs(Math.log(found.bpm / bpm))).toBeLessThan(0.05);
    }
  });

  // definition: the meter that each text is in; common practice, where its back beats, foot and bass drum fall
  it.each([
    {
      meter: '5/4',
      bpm: 130,
      groove: 'ride: x x.x x x x.x, hihat-foot: . x . . x, bass: x . . x .',
      comping: 'snare',
      exercise: '..x ... ..x ... x..',
    },
    {
      meter: '5/4',
      bpm: 110,
      groove: 'hihat: xx xx xx xx xx, snare: . X . X ., bass: x. .. x. .. x.',
      comping: 'bass',
      exercise: 'xx .. x. .. .x',
    },
    {
      meter: '2+2+3/8',
      bpm: 120,
      groove: 'hihat: Xx Xx Xxx, snare: .. X. ..., bass: x. .. x..',
      comping: 'bass',
      exercise: 'x. .x x..',
    },
    {
      meter: '3+2+2/8',
      bpm: 150,
      groove: 'hihat: Xxx Xx Xx, snare: ... X. .., bass: x.. .. x.',
      comping: 'bass',
      exercise: 'x.x .. x.',
    },
  ])('[LI6300] hears that $groove is in $meter', ({ meter, bpm, groove, comping, exercise }) => {
    const text = `title: Odd\nmeter: ${meter}\ngroove: {${groove}}\ncomping: ${comping}\nexercises: ["${exercise} | ${exercise}"]\n`;
    const found = heard(play(parseLesson(text, 'odd').lesson as Lesson, 1, bpm).strokes);
    expect(found.meter.text).toBe(meter);
    // definition: slowing by 3 % from start to end
    expect(Math.abs(Math.log(found.bpm / bpm))).toBeLessThan(0.05);
    expect(found.bars).toHaveLength(8);
  });

  it.each([72, 90, 108])('[LI6301] counts a samba at %i in two', (bpm) => {
    const lesson = parseLesson(starterText('samba', 'Samba'), 'samba').lesson as Lesson;
    const { strokes, bars } = play(lesson, 1, bpm);
    const found = heard(strokes);
    // definition: the starting groove's own text
    expect(found.meter.text).toBe('2/4');
    expect(Math.abs(Math.log(found.bpm / bpm))).toBeLessThan(0.05);
    expect(found.bars).toHaveLength(bars);
    // common practice: a bossa has the same foot and bass drum, twice as slowly
    const bossa = parseLesson(starterText('bossa', 'Bossa'), 'bossa').lesson as Lesson;
    expect(heard(play(bossa, 1, 100 + (bpm - 72)).strokes).meter.text).toBe('4/4');
  });

  // definition: the starting groove's own text; nobody plays the second sixteenth, which would tell of them by itself
  it.each([72, 108])('[LI4404] hears sixteenths at %i though the second of a beat is never struck', (bpm) => {
    const lesson = parseLesson(starterText('samba', 'Samba'), 'samba').lesson as Lesson;
    const { strokes } = play(lesson, 1, bpm);
    const hands = strokes.filter(({ voice }) => voice !== 'hihat-foot');
    const { feel, groove } = heard(hands, { meter: lesson.meter, bpm: Bpm(bpm) });
    expect(formatFeel(feel)).toBe('even');
    expect(groove.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`)).toContain(
      'ride X.xx X.xx',
    );
  });

  it('[LI4401] says what it writes under a back beat though nobody could hear it', () => {
    const lesson = parseLesson(starterText('shuffle', 'Shuffle'), 'shuffle').lesson as Lesson;
    const sections = [{ play: 'pattern' as const, bars: 8, ending: null }];
    const form = { name: 'loop', sections, repeat: 1, countInBars: 0 };
    const { strokes, durationSeconds } = perform(lesson, { exercise: 1, form });
    const listener = new TakeListener(RATE);
    listener.push(sounded(strokes, durationSeconds + 1));
    const { transcript } = listener.transcribe();
    // definition: the groove of the lesson that was sounded
    const due = lesson.groove.find(({ voice }) => voice === 'hihat');
    const written = transcript?.groove.find(({ voice }) => voice === 'hihat');
    expect(written && formatPattern(written.pattern)).toBe(due && formatPattern(due.pattern));
    const assumed = transcript?.assumed ?? [];
    expect(transcript?.remarks).toEqual([
      { fact: 'written-as-elsewhere', voice: 'hihat', under: 'snare', count: assumed.length },
    ]);
    // definition: beats 2 and 4, half a bar apart, at 84 a minute
    for (const { timeSeconds } of assumed)
      expect(Math.abs(((timeSeconds * 84) / 60) % 2) - 1).toBeCloseTo(0, 1);
    expect(assumed.length).toBeGreaterThan(4);
  });

  it('[LI72] tells what repeats in every bar from what is played over it', () => {
    const lesson = lessonNamed('first-swing');
    const four = [3, 8, 14, 20].flatMap((exercise, i) => {
      const { strokes, bars } = play(lesson, exercise, 80, 0);
      const shift = i * bars * 3;
      return strokes.map((stroke) => ({ ...stroke, timeSeconds: Seconds(stroke.timeSeconds + shift) }));
    });
    const { groove, comping, exercises } = heard(four);
    expect(groove.map(({ voice, pattern }) => `${voice} ${formatPattern(pattern)}`)).toEqual([
      'ride x x.x x x.x',
      'hihat-foot . x . x',
      'bass x x x x',
    ]);
    expect(comping).toBe('snare');
    const written = [3, 8, 14, 20].map((exercise) =>
      formatPattern(lesson.exercises[exercise - 1]!.parts[0]!.pattern),
    );
    expect(exercises.map(({ parts }) => parts.map(({ pattern }) => formatPattern(pattern)).join())).toEqual(
      written,
    );
  });

  it('[LI72] writes down a groove that nothing is played over', () => {
    const lesson = lessonNamed('first-swing');
    const { strokes } = play(lesson, 7, 100, 0);
    const { groove, comping, exercises } = heard(
      strokes.filter(({ voice }) => voice === 'ride' || voice === 'hihat-foot'),
    );
    // definition: the same two voices in every bar
    expect(groove.map(({ voice }) => voice)).toEqual(['ride', 'hihat-foot']);
    expect([comping, exercises]).toEqual([null, []]);
  });

  it('[LI72] makes no exercise of a bar in which nobody plays', () => {
    const lesson = lessonNamed('first-swing');
    const { strokes } = play(lesson, 7, 72, 0);
    // definition: four bars of 3.33 s, the third left out
    const third = 1.3 + 2 * (240 / 72) - 0.1;
    const rested = strokes.filter(({ timeSeconds: at }) => at < third || at > third + 240 / 72);
    const { bars, exercises } = heard(rested);
    expect(bars).toHaveLength(4);
    expect(exercises.map(({ parts }) => formatPattern(parts[0]!.pattern))).toEqual(['x.. x.. ... ..x']);
  });

  it('[LI72] ends where all is groove: a ride alone, or with the foot', () => {
    const { strokes, bars } = play(lessonNamed('first-swing'), 3, 100);
    for (const voices of [['ride'], ['ride', 'hihat-foot']]) {
      const found = heard(strokes.filter(({ voice }) => voices.includes(voice)));
      // definition: nobody plays anything over it
      expect(found.exercises).toEqual([]);
      expect(found.comping).toBeNull();
      expect(found.groove.map(({ voice }) => voice)).toEqual(voices);
      expect(found.bars.length).toBe(bars);
    }
  });

  it('[LI72] tells the back beat of a shuffle, which stays, from its bass drum', () => {
    const { groove, comping } = heard(play(lessonNamed('shuffle'), 12, 150).strokes);
    expect(groove.map(({ voice }) => voice)).toEqual(['hihat', 'snare']);
    expect(comping).toBe('bass');
  });

  it('[LI73] keeps to what is known beforehand: meter, feel and about the tempo', () => {
    const { strokes } = play(lessonNamed('shuffle'), 4, 144);
    const found = heard(strokes, { meter: lessonNamed('shuffle').meter, bpm: Bpm(140) });
    expect(found.meter.text).toBe('12/8');
    // definition: 144 quarter notes a minute, slowing by 3 % from start to end: 1.5 in the middle, over the whole 3
    expect(found.bpm).toBeGreaterThan(136);
    expect(found.bpm).toBeLessThan(144);
    const swung = heard(strokes, { feel: { kind: 'even' } });
    expect(formatFeel(swung.feel)).toBe('even');
  });

  it('[LI74] hears accents and ghost notes', () => {
    const { exercises } = heard(play(lessonNamed('funk'), 7, 76).strokes);
    const [snare] = exercises[0]!.parts;
    // definition: what the demo lesson has as exercise 7
    const due = lessonNamed('funk').exercises[6]!.parts[0]!.pattern;
    expect(formatPattern(snare!.pattern)).toBe(formatPattern(due));
  });

  it('[LI75] writes a lesson that has no fault and says the same', () => {
    for (const name of ['first-swing', 'bossa', 'funk']) {
      const found = heard(play(lessonNamed(name), 3, 90).strokes);
      const { lesson, problems } = parseLesson(
        lessonOfTranscript(found, 'Heard: "a take"'),
        'heard.lesson.yaml',
      );
      expect(problems).toEqual([]);
      expect(lesson?.title).toBe('Heard: "a take"');
      expect(lesson?.groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)])).toEqual(
        found.groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)]),
      );
      expect(lesson?.comping).toBe(found.comping);
    }
  });

  it('[LI76] says why nothing was written', () => {
    expect(transcribeNotes([]).refusal?.fact).toBe('no-drum-notes');
    const { strokes } = play(lessonNamed('bossa'), 1, 100);
    expect(transcribeNotes(strokes.slice(0, 5)).refusal?.fact).toBe('no-beat-followed');
  });
});
