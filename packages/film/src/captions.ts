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
import { capital, countOf, countUnder, type FilmWords, sayStrokes, spokenMark } from '@shedbook/words';
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

/** A count that no line ends in. */
function unbroken(count: string): string {
  return count.replaceAll(' ', '\u00a0');
}

/** What a voice plays in each bar: the counts of each way of striking; a bar in which it is silent is said to be. */
function playsByBar({ voice, pattern }: Exercise['parts'][number], said: FilmWords): readonly string[] {
  const { on, marked, ways, silent } = said.captions;
  const bars = sayStrokes(said.counts, pattern, (mark) => spokenMark(said.marks, voice, mark));
  return bars.map((strokes) => {
    const told = [...new Set(strokes.map(({ how }) => how))].map((how) => {
      const counts = strokes.filter((each) => each.how === how).map(({ count }) => unbroken(count));
      return how === '' ? on({ counts }) : marked({ mark: how, counts });
    });
    return told.length === 0 ? silent : ways({ ways: told });
  });
}

/** Bars that all play the same are told as one. */
function distinct(bars: readonly string[]): readonly string[] {
  return new Set(bars).size === 1 ? bars.slice(0, 1) : bars;
}

function stageText(scene: StagedScene, stage: number, said: FilmWords): string {
  const joins = scene.stages[stage]?.layer.joins ?? [];
  const { inBar, first, joins: more, feathered, unchanged } = said.captions;
  const told = joins.flatMap((voice) => {
    const part = voice === 'pattern' ? null : scene.lesson.groove.find((each) => each.voice === voice);
    const limb = part && limbOfVoice(scene, part.voice);
    if (!part || !limb) return [];
    const bars = distinct(playsByBar(part, said));
    const plays =
      bars.length === 1 ? bars[0] : bars.map((each, i) => inBar({ bar: i + 1, plays: each })).join('; ');
    const sentence = isFeathered(scene.lesson, part.voice) ? feathered : stage === 0 ? first : more;
    return [sentence({ voice: part.voice, limb, plays: plays as string })];
  });
  return (stage === 1 ? [...told, unchanged] : told).join(' ');
}

/** How fast captions are read, in characters a second: what broadcasters count on (common practice). */
const READ_A_SECOND = 17;
/** The first stage of a groove has so much left, at the end, that its own caption can be read. */
const STAGE_READ_SECONDS = 3;

/** What is said before the groove begins; null for nothing. */
function beforeGroove(film: Film, scene: StagedScene, said: FilmWords): string | null {
  const counts = countIn(film, scene, said);
  const told = [...(counts === null ? [] : [said.captions.counted({ counts })]), ...inBeatTexts(film, said)];
  return told.length === 0 ? null : told.join(' ');
}

function grooveCues(film: Film, scene: StagedScene, said: FilmWords): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const { program, stages } = scene;
  const from = scene.startFrame / rate;
  const before = beforeGroove(film, scene, said);
  const starts = stages.map(({ fromBar }) => momentOf(scene, program.bars[fromBar - 1]?.place ?? 0, rate));
  // Where nothing comes before it, the first is read during the count-in already.
  const read = from + (before ?? '').length / READ_A_SECOND;
  const last = (starts[1] ?? momentOf(scene, program.end, rate)) - STAGE_READ_SECONDS;
  const first = before === null ? from : Math.max(starts[0] as number, Math.min(read, last));
  const cues = stages.map((_, stage) => ({
    fromSeconds: Seconds(stage === 0 ? first : (starts[stage] as number)),
    toSeconds: Seconds(starts[stage + 1] ?? momentOf(scene, program.end, rate)),
    text: stageText(scene, stage, said),
  }));
  return before === null
    ? cues
    : [{ fromSeconds: Seconds(from), toSeconds: Seconds(first), text: before }, ...cues];
}

/** The limb that strikes a voice of the exercise, by its side; null where hands change, or nobody's limb is meant. */
function onlyLimb(scene: StagedScene, voice: Voice) {
  const own = scene.strokes.filter((stroke) => stroke.voice === voice && stroke.role === 'pattern');
  return new Set(own.map(({ limb }) => limb)).size === 1 ? limbOfVoice(scene, voice) : null;
}

/** What each bar of the exercise plays, voice by voice; one where all are the same. */
function barTexts(scene: StagedScene, { parts }: Exercise, said: FilmWords): readonly string[] {
  const { plays, playsWith } = said.captions;
  const most = Math.max(...parts.map(({ pattern }) => pattern.bars.length));
  const sentences = parts.map((part) => {
    const { voice } = part;
    const limb = onlyLimb(scene, voice);
    return playsByBar(part, said).map((told) =>
      limb ? playsWith({ voice, limb, plays: told }) : plays({ voice, plays: told }),
    );
  });
  const bars = Array.from({ length: most }, (_, bar) =>
    sentences.map((own) => own[bar % own.length] as string).join(' '),
  );
  const told = distinct(bars);
  return told.length === 1
    ? told
    : told.map((text, bar) => `${capital(said.counts.bar({ n: bar + 1 }))}: ${text}`);
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
  return said.captions.alone({ lead, counts: [...new Set(alone.map(count))].map(unbroken).join(', ') });
}

/** What was told before in the film: what is said again and again is read no longer. */
type ToldBefore = Set<string>;

/** A text that was not told before, or null. */
function once(text: string | null, before: ToldBefore): string | null {
  if (text === null || before.has(text)) return null;
  before.add(text);
  return text;
}

interface Told {
  /** Whole notes. */
  readonly place: number;
  /** Null where nothing is said any more. */
  readonly text: string | null;
}

/** The first time round: what each bar of the exercise plays, then what to listen for, and what else comes. */
function roundTexts(
  bars: readonly ProgramBar[],
  texts: { readonly bars: readonly string[]; readonly listen: string | null },
  said: FilmWords,
  before: ToldBefore,
): readonly Told[] {
  const heard = new Set<number>();
  let isListening = false;
  return bars.flatMap(({ place, play, patternBar }, index): readonly Told[] => {
    const isNew = bars[index - 1]?.play !== play;
    if (play === 'rest') return isNew ? [{ place, text: said.captions.rest }] : [];
    if (play === 'time') {
      const { time, timeAgain } = said.captions;
      return isNew ? [{ place, text: once(time, before) ?? timeAgain }] : [];
    }
    const bar = texts.bars.length === 1 ? 0 : (patternBar ?? 0);
    if (!heard.has(bar)) {
      heard.add(bar);
      return [{ place, text: texts.bars[bar] ?? null }];
    }
    if (isListening || texts.listen === null) return [];
    isListening = true;
    return [{ place, text: texts.listen }];
  });
}

/** How many bars it is said for that all comes again. */
const AGAIN_BARS = 2;

/** What is told of the bars of an exercise: of the first time round, and how often it comes again. */
function exerciseTexts(
  scene: StagedScene,
  exercise: Exercise,
  said: FilmWords,
  before: ToldBefore,
): readonly Told[] {
  const { program, asked, formBars, form } = scene;
  const around = asked.bars.length / form.repeat;
  const second = program.bars.findIndex((_, index) => (formBars[index] ?? 1) > around);
  const bars = second === -1 ? program.bars : program.bars.slice(0, second);
  const texts = {
    bars: barTexts(scene, exercise, said),
    listen: once(listenText(scene, exercise, said), before),
  };
  const told = roundTexts(bars, texts, said, before);
  if (second === -1) return told;
  const again = said.captions.again({ times: form.repeat - 1 });
  const [from, to] = [second, second + AGAIN_BARS].map((bar) => program.bars[bar]?.place ?? program.end);
  return [...told, { place: from as number, text: again }, { place: to as number, text: null }];
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

/** Which exercise it is, how fast, over what where no scene before has told, and, once, how it is counted in. */
function opening(film: Film, scene: StagedScene, said: FilmWords, before: ToldBefore): string {
  const exercise = headingOf(scene, 0, film);
  const bpm = countedTempo(scene.lesson.meter, scene.bpm);
  const groove = film.request.buildUp ? [] : scene.lesson.groove.map(({ voice }) => voice);
  const { bars, barsOver, counted, countAlong } = said.captions;
  const counts = countIn(film, scene, said);
  return [
    groove.length === 0 ? bars({ exercise, bpm }) : barsOver({ exercise, bpm, groove }),
    once(counts === null ? countAlong : counted({ counts }), before) ?? '',
  ]
    .join(' ')
    .trim();
}

function exerciseCues(film: Film, scene: StagedScene, said: FilmWords, before: ToldBefore): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const exercise = scene.lesson.exercises.find(({ number }) => number === scene.exercise);
  if (!exercise) return [];
  const told: readonly Told[] = [
    { place: scene.program.start, text: opening(film, scene, said, before) },
    ...exerciseTexts(scene, exercise, said, before),
  ];
  return told.flatMap(({ place, text }, index) => {
    if (text === null) return [];
    const fromSeconds = index === 0 ? scene.startFrame / rate : momentOf(scene, place, rate);
    const to = momentOf(scene, told[index + 1]?.place ?? scene.program.end, rate);
    return [{ fromSeconds: Seconds(fromSeconds), toSeconds: Seconds(to), text }];
  });
}

/** How a beat of what is played is counted, so that its counts are understood; nothing where none is divided. */
function inBeatTexts({ scenes }: Film, said: FilmWords): readonly string[] {
  const strokes = scenes.flatMap((scene) => (scene.kind === 'title' ? [] : scene.strokes));
  const divided = new Set(strokes.flatMap(({ role, slots }) => (role === 'count-in' ? [] : slots)));
  // Whoever counts "1 e & a" counts "1 &" with it.
  const finest = [...divided].filter((slots) => ![...divided].some((n) => n > slots && n % slots === 0));
  const inBeat = (slots: number) => {
    const counts = Array.from({ length: slots }, (_, slot) => countUnder(said.counts, 0, slot, slots));
    const last = countOf(said.counts, 1, slots - 1, slots);
    return said.captions.inBeat({ counts: unbroken(counts.join(' ')), last: unbroken(last) });
  };
  return finest.filter((slots) => slots > 1).map(inBeat);
}

/** What the lesson is; how its beats are counted, where no groove comes before which it is said. */
function titleText(film: Film, said: FilmWords): string {
  const title = said.captions.title({ title: film.request.lesson.title });
  const isSaidLater = film.scenes.some(({ kind }) => kind === 'groove');
  return [title, ...(isSaidLater ? [] : inBeatTexts(film, said))].join(' ');
}

/** The captions of a film, in order, in the language that its tools speak. */
export function captionsOf(film: Film): readonly Cue[] {
  const rate = film.request.framesPerSecond;
  const { said } = film.tools;
  const before: ToldBefore = new Set();
  return film.scenes.flatMap((scene): readonly Cue[] => {
    if (scene.kind === 'groove') return grooveCues(film, scene, said);
    if (scene.kind === 'exercise') return exerciseCues(film, scene, said, before);
    return [
      { fromSeconds: Seconds(0), toSeconds: Seconds(scene.frames / rate), text: titleText(film, said) },
    ];
  });
}

/** Characters of a line of a caption: what fits a telephone held upright. */
const LINE = 42;

/** A sentence in lines of about the same length. */
function sentenceLines(sentence: string): readonly string[] {
  const lines = Math.ceil(sentence.length / LINE);
  const aim = sentence.length / lines + 4;
  const out = [''];
  for (const word of sentence.split(' ')) {
    const last = out.at(-1) as string;
    if (last !== '' && last.length + 1 + word.length > aim && out.length < lines) out.push(word);
    else out[out.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return out;
}

/** A text in lines; each of its sentences begins one. */
function inLines(text: string): string {
  return text
    .split(/(?<=[.?!]) /)
    .flatMap(sentenceLines)
    .join('\n');
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
