/**
 * Captions: what is played, and what to listen for.
 *
 * Conventions: seconds of the film; bars of a form from 1.
 * Source: WebVTT, W3C Candidate Recommendation of 4 April 2019, 4.1 (syntax of a file) and 4.2.2 (cue text: `&`, `<` and
 * `>` are escaped).
 */
import { countedTempo, type Exercise, equals, Seconds, type Stroke, type Voice } from '@shedbook/core';
import { isFeathered } from '@shedbook/engrave';
import type { ProgramBar } from '@shedbook/playing';
import { countWordOf } from '@shedbook/sound';
import { capital, countOf, countUnder, type FilmWords, sayPattern, spokenMark } from '@shedbook/words';
import { headingOf, limbOfVoice } from './draw.ts';
import type { Film, StagedScene } from './film.ts';

/** A caption and when it is shown. */
export interface Cue {
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
  readonly text: string;
}

/** When a place of a scene is heard, in seconds of the film. */
function momentOf(scene: StagedScene, place: number, rate: number): number {
  return (scene.startFrame + scene.leadFrames) / rate + scene.clock.secondsAt(place);
}

/** The counts of each bar that a voice plays; a bar in which it is silent is said to be. */
function countsByBar(voice: Voice, pattern: Exercise['parts'][number]['pattern'], said: FilmWords) {
  const bars = sayPattern(said.counts, pattern, (mark) => spokenMark(said.marks, voice, mark));
  return bars.map((bar) => (bar === '' ? said.captions.silent : bar));
}

function stageText(scene: StagedScene, stage: number, said: FilmWords): string {
  const joins = scene.stages[stage]?.layer.joins ?? [];
  const told = joins.flatMap((voice) => {
    const part = voice === 'pattern' ? null : scene.lesson.groove.find((each) => each.voice === voice);
    const limb = part && limbOfVoice(scene, part.voice);
    if (!part || !limb) return [];
    const counts = countsByBar(part.voice, part.pattern, said).join('; ');
    const { first, joins: more, feathered } = said.captions;
    const sentence = isFeathered(scene.lesson, part.voice) ? feathered : stage === 0 ? first : more;
    return [sentence({ voice: part.voice, limb, counts })];
  });
  return told.join(' ');
}

function grooveCues(film: Film, scene: StagedScene, said: FilmWords): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const { program, stages } = scene;
  const counts = countIn(film, scene, said);
  const texts = stages.map((_, stage) => stageText(scene, stage, said));
  const starts = stages.map(({ fromBar }) => program.bars[fromBar - 1]?.place ?? 0);
  return stages.map((_, stage) => ({
    // The first is read during the count-in already.
    fromSeconds: Seconds(momentOf(scene, stage === 0 ? program.start : (starts[stage] as number), rate)),
    toSeconds: Seconds(momentOf(scene, starts[stage + 1] ?? program.end, rate)),
    text:
      stage === 0 && counts !== null
        ? `${said.captions.counted({ counts })} ${texts[0]}`
        : (texts[stage] as string),
  }));
}

/** The limb that strikes a voice of the exercise, by its side; null where hands change, or nobody's limb is meant. */
function onlyLimb(scene: StagedScene, voice: Voice) {
  const own = scene.strokes.filter((stroke) => stroke.voice === voice && stroke.role === 'pattern');
  return new Set(own.map(({ limb }) => limb)).size === 1 ? limbOfVoice(scene, voice) : null;
}

/** What one bar of the exercise plays, voice by voice. */
function barText(scene: StagedScene, { parts }: Exercise, bar: number, said: FilmWords): string {
  const plays = parts.map(({ voice, pattern }) => {
    const counts = countsByBar(voice, pattern, said)[bar % pattern.bars.length] ?? said.captions.silent;
    const limb = onlyLimb(scene, voice);
    return limb ? said.captions.playsWith({ voice, limb, counts }) : said.captions.plays({ voice, counts });
  });
  const many = parts.some(({ pattern }) => pattern.bars.length > 1);
  return `${many ? `${capital(said.counts.bar({ n: bar + 1 }))}: ` : ''}${plays.join(' ')}`;
}

/** Where the exercise falls together with the lead voice, and where it is alone. */
function listenText({ strokes, lesson }: StagedScene, exercise: Exercise, said: FilmWords): string | null {
  const { lead } = lesson;
  if (exercise.parts.some(({ voice }) => voice === lead)) return null;
  const leads = strokes.filter(({ voice, role }) => voice === lead && role === 'groove');
  const own = strokes.filter(({ role }) => role === 'pattern');
  if (leads.length === 0 || own.length === 0) return null;
  const alone = own.filter((stroke) => !leads.some(({ at }) => equals(at, stroke.at)));
  if (alone.length === 0) return said.captions.together({ lead });
  const count = ({ written: { beat, slot }, slots }: Stroke) =>
    countOf(said.counts, beat - 1, slot - 1, slots);
  return said.captions.alone({ lead, counts: [...new Set(alone.map(count))].join(', ') });
}

/** Bars that follow each other and play the same. */
function stretchesOf(bars: readonly ProgramBar[]): readonly (readonly ProgramBar[])[] {
  const stretches: ProgramBar[][] = [];
  for (const bar of bars) {
    const last = stretches.at(-1);
    if (last?.[0]?.play === bar.play) last.push(bar);
    else stretches.push([bar]);
  }
  return stretches;
}

interface Told {
  /** Whole notes. */
  readonly place: number;
  readonly text: string | null;
}

/** What is told of the bars of an exercise: the first time round each of them, then what to listen for. */
function barTexts(scene: StagedScene, exercise: Exercise, said: FilmWords): readonly Told[] {
  const listen = listenText(scene, exercise, said);
  const heard = new Set<number>();
  return stretchesOf(scene.program.bars).flatMap((stretch): readonly Told[] => {
    const [first] = stretch;
    if (!first) return [];
    const { time, rest } = said.captions;
    if (first.play !== 'pattern') return [{ place: first.place, text: first.play === 'time' ? time : rest }];
    const told = stretch.map(({ place, patternBar }): Told => {
      const isNew = patternBar !== null && !heard.has(patternBar);
      if (patternBar !== null) heard.add(patternBar);
      return { place, text: isNew ? barText(scene, exercise, patternBar, said) : listen };
    });
    return told;
  });
}

/** Without what was told before in the scene: a film that says the same again and again is read no longer. */
function toldOnce(told: readonly Told[]): readonly Told[] {
  const before = new Set<string | null>();
  return told.flatMap((each, index) => {
    const isSame = each.text === told[index - 1]?.text;
    if (isSame && index > 0) return [];
    const isNew = !before.has(each.text);
    before.add(each.text);
    return [isNew ? each : { ...each, text: null }];
  });
}

/** What a voice says before the first bar; null where none is to be heard. */
function countIn({ request }: Film, { strokes, shown }: StagedScene, { counts }: FilmWords): string | null {
  if (!request.countAloud || shown) return null;
  const syllables: Readonly<Record<string, string>> = counts.syllables;
  const words = strokes
    .filter(({ voice, written }) => voice === 'click' && written.bar < 1)
    .flatMap((click) => countWordOf(click) ?? []);
  return words.length === 0 ? null : words.map((word) => syllables[word] ?? word).join(', ');
}

/** Which exercise it is, how fast, over what where no scene before has told, and how it is counted in. */
function opening(film: Film, scene: StagedScene, said: FilmWords): string {
  const exercise = headingOf(scene, 0, film);
  const bpm = countedTempo(scene.lesson.meter, scene.bpm);
  const groove = film.request.buildUp ? [] : scene.lesson.groove.map(({ voice }) => voice);
  const { bars, barsOver, counted, countAlong } = said.captions;
  const counts = countIn(film, scene, said);
  return [
    groove.length === 0 ? bars({ exercise, bpm }) : barsOver({ exercise, bpm, groove }),
    counts === null ? countAlong : counted({ counts }),
  ].join(' ');
}

function exerciseCues(film: Film, scene: StagedScene, said: FilmWords): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const exercise = scene.lesson.exercises.find(({ number }) => number === scene.exercise);
  if (!exercise) return [];
  const told: readonly Told[] = [
    { place: scene.program.start, text: opening(film, scene, said) },
    ...toldOnce(barTexts(scene, exercise, said)),
  ];
  return told.flatMap(({ place, text }, index) => {
    if (text === null) return [];
    const fromSeconds = index === 0 ? scene.startFrame / rate : momentOf(scene, place, rate);
    const to = momentOf(scene, told[index + 1]?.place ?? scene.program.end, rate);
    return [{ fromSeconds: Seconds(fromSeconds), toSeconds: Seconds(to), text }];
  });
}

/** What the lesson is, and how a beat of what is played is counted, so that its counts are understood. */
function titleText({ request: { lesson }, scenes }: Film, said: FilmWords): string {
  const strokes = scenes.flatMap((scene) => (scene.kind === 'title' ? [] : scene.strokes));
  const divided = new Set(strokes.flatMap(({ role, slots }) => (role === 'count-in' ? [] : slots)));
  // Whoever counts "1 e & a" counts "1 &" with it.
  const finest = [...divided].filter((slots) => ![...divided].some((n) => n > slots && n % slots === 0));
  const counted = finest
    .filter((slots) => slots > 1)
    .map((slots) =>
      Array.from({ length: slots }, (_, slot) => countUnder(said.counts, 0, slot, slots)).join(' '),
    );
  const title = said.captions.title({ title: lesson.title });
  return counted.length === 0 ? title : `${title} ${said.captions.inBeat({ counts: counted.join('; ') })}`;
}

/** The captions of a film, in order, in the language that its tools speak. */
export function captionsOf(film: Film): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const { said } = film.tools;
  return film.scenes.flatMap((scene): readonly Cue[] => {
    if (scene.kind === 'groove') return grooveCues(film, scene, said);
    if (scene.kind === 'exercise') return exerciseCues(film, scene, said);
    return [
      { fromSeconds: Seconds(0), toSeconds: Seconds(scene.frames / rate), text: titleText(film, said) },
    ];
  });
}

/** Characters of a line of a caption: what fits a telephone held upright. */
const LINE = 42;

/** A text in lines of about the same length. */
function inLines(text: string): string {
  const lines = Math.ceil(text.length / LINE);
  const aim = text.length / lines + 4;
  const out = [''];
  for (const word of text.split(' ')) {
    const last = out.at(-1) as string;
    if (last !== '' && last.length + 1 + word.length > aim && out.length < lines) out.push(word);
    else out[out.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return out.join('\n');
}

function stamp(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const pair = (value: number, digits = 2) => String(value).padStart(digits, '0');
  const [hours, minutes] = [Math.floor(ms / 3_600_000), Math.floor(ms / 60_000) % 60];
  return `${pair(hours)}:${pair(minutes)}:${pair(Math.floor(ms / 1000) % 60)}.${pair(ms % 1000, 3)}`;
}

const ESCAPED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/** Captions as a WebVTT file. */
export function writeVtt(cues: readonly Cue[]): string {
  const blocks = cues.map(({ fromSeconds, toSeconds, text }) => {
    const safe = inLines(text).replaceAll(/[&<>]/g, (character) => ESCAPED[character] ?? character);
    return `${stamp(fromSeconds)} --> ${stamp(toSeconds)}\n${safe}\n`;
  });
  return ['WEBVTT\n', ...blocks].join('\n');
}
