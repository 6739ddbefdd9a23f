/**
 * Printing a lesson as a file. A lesson that came from a file is better changed with `editLesson`, which keeps
 * comments; this writes a new one, with everything said that differs from the defaults.
 */
import { Document } from 'yaml';
import { VOICE_FACTS, VOICES, type Voice } from '../kit/voice.ts';
import { DEFAULT_SHEET } from '../lesson/defaults.ts';
import { exampleToData } from '../lesson/example.ts';
import { expressionToData } from '../lesson/expression-data.ts';
import { handsOf } from '../lesson/hands.ts';
import { formatHow, type HowByVoice, howEntries } from '../lesson/how.ts';
import { patternsName } from '../lesson/identity.ts';
import type { Ending, Exercise, Form, FormSection, Lesson } from '../lesson/lesson.ts';
import { mediaToData } from '../lesson/media.ts';
import { repetitionToData } from '../lesson/repeats.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import { formatFeel } from './read-feel.ts';

/** How YAML is laid out: long pattern texts stay on one line. */
export const PRINT = { lineWidth: 0, indentSeq: true, flowCollectionPadding: false } as const;

type Data = Record<string, unknown>;

/** Lasting names; of what it is a copy of, only as much as its patterns do not say. */
function namesToData(exercise: Omit<Exercise, 'number'>): Data {
  const { id, from } = exercise;
  const isSameName = from?.exercise === patternsName(exercise);
  const origin = from && (isSameName ? from.lesson : `${from.lesson}/${from.exercise}`);
  return { ...(id === undefined ? {} : { id }), ...(origin === undefined ? {} : { from: origin }) };
}

/** How voices are played, as a map of texts. */
function howToData(how: HowByVoice): Data {
  return Object.fromEntries(howEntries(how).map(([voice, words]) => [voice, formatHow(words)]));
}

/** A text where an exercise plays one voice and says how, else a map. */
function exerciseHowToData(how: HowByVoice, { parts }: Pick<Exercise, 'parts'>): string | Data {
  const [first, ...others] = parts;
  const own = first && how[first.voice];
  const isOwn = own !== undefined && others.length === 0 && Object.keys(how).length === 1;
  return isOwn ? formatHow(own) : howToData(how);
}

/** Hands of the first voice as a text; of several, or of another, by voice. */
function handsToData(exercise: Pick<Exercise, 'parts' | 'sticking'>): string | Data | null {
  const written = exercise.parts.flatMap(({ voice }, part) => {
    const hands = handsOf(exercise, part);
    return hands ? [[voice, hands.join(' ')] as const] : [];
  });
  const [first] = written;
  if (!first) return null;
  const isFirst = written.length === 1 && first[0] === exercise.parts[0]?.voice;
  return isFirst ? first[1] : Object.fromEntries(written);
}

/** An exercise as a lesson file has it: a pattern text where that says everything. */
export function exerciseToData(exercise: Omit<Exercise, 'number'>, comping: Voice): string | Data {
  const [first, ...others] = exercise.parts;
  const alone = first && others.length === 0 && first.voice === comping;
  const pattern = alone
    ? formatPattern(first.pattern)
    : Object.fromEntries(exercise.parts.map((part) => [part.voice, formatPattern(part.pattern)]));
  const { name, notes, how, keep } = exercise;
  const sticking = handsToData(exercise);
  const said = {
    ...(name === null ? {} : { name }),
    ...(sticking === null ? {} : { sticking }),
    ...(notes === null ? {} : { notes }),
    ...mediaToData(exercise),
    ...(how === undefined ? {} : { how: exerciseHowToData(how, exercise) }),
    ...exampleToData(exercise),
    ...(keep === true ? { keep } : {}),
    ...repetitionToData(exercise),
    ...expressionToData(exercise),
    ...namesToData(exercise),
  };
  return typeof pattern === 'string' && Object.keys(said).length === 0 ? pattern : { pattern, ...said };
}

function endingToData(ending: Ending): Data {
  return { voices: ending.voices.join(' + '), beat: ending.beat, cell: ending.cell.text };
}

function sectionToData(section: FormSection): Data {
  const { play, bars, ending, click } = section;
  return {
    [play]: bars,
    ...(ending ? { ending: endingToData(ending) } : {}),
    ...(click ? { click: click.length === 0 ? 'none' : click } : {}),
  };
}

/** A form as data, in the order in which it is written. */
export function formToData(form: Form): Data {
  return { sections: form.sections.map(sectionToData), repeat: form.repeat, countIn: form.countInBars };
}

function changed<T extends object>(value: T, from: T): Data {
  return Object.fromEntries(Object.entries(value).filter(([key, each]) => from[key as keyof T] !== each));
}

function byVoice<T>(value: (voice: Voice) => T): Data {
  return Object.fromEntries(VOICES.map((voice) => [voice, value(voice)]));
}

function vocabularyToData(lesson: Lesson): readonly (string | Data)[] {
  return lesson.vocabulary.map((each) =>
    each.name === null ? each.cell.text : { cell: each.cell.text, name: each.name },
  );
}

/** What is said of how and what is played, every key of it. */
function playedToData(lesson: Lesson): Data {
  const { tempo } = lesson;
  return {
    meter: lesson.meter.text,
    tempo: { start: tempo.startBpm, goal: tempo.goalBpm, step: tempo.stepBpm },
    feel: formatFeel(lesson.feel),
    playedWith: lesson.playedWith,
    groove: Object.fromEntries(lesson.groove.map((part) => [part.voice, formatPattern(part.pattern)])),
    lead: lesson.lead,
    comping: lesson.comping,
    balance: byVoice((voice) => lesson.balance[voice]),
    exerciseBalance: byVoice((voice) => lesson.exerciseBalance[voice]),
    vocabulary: vocabularyToData(lesson),
    exercises: lesson.exercises.map((exercise) => exerciseToData(exercise, lesson.comping)),
    forms: Object.fromEntries(lesson.forms.map((form) => [form.name, formToData(form)])),
    layers: lesson.layers.map((layer) => layer.joins),
    compose: lesson.compose,
  };
}

const PLAIN_LIMBS = Object.fromEntries(VOICES.map((v) => [v, VOICE_FACTS[v].limb])) as Lesson['limbs'];

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** What goes with a groove of one's own, and with levels of one's own. */
const WITH_GROOVE: readonly string[] = ['groove', 'lead', 'layers'];
const WITH_BALANCE: readonly string[] = ['balance', 'exerciseBalance'];

/** A section as plain data: what differs from its lesson. */
function lessonSectionToData(section: Lesson, lesson: Lesson): Data {
  const whole = playedToData(lesson);
  const own = playedToData(section);
  const isMine = (key: string) => !isSame(own[key], whole[key]);
  const together = [
    ...([...WITH_GROOVE, 'meter'].some(isMine) ? WITH_GROOVE : []),
    ...(WITH_BALANCE.some(isMine) ? WITH_BALANCE : []),
  ];
  const keys = Object.keys(own).filter((key) => key === 'exercises' || isMine(key) || together.includes(key));
  const limbs = changed(section.limbs, lesson.limbs);
  const how = changed(howToData(section.how), howToData(lesson.how));
  return {
    ...(section.heading === null ? {} : { heading: section.heading }),
    ...(section.before === undefined ? {} : { before: section.before }),
    ...(section.text === null ? {} : { text: section.text }),
    ...mediaToData(section),
    ...Object.fromEntries(keys.map((key) => [key, own[key]])),
    ...(Object.keys(limbs).length > 0 ? { limbs } : {}),
    ...(Object.keys(how).length > 0 ? { how } : {}),
  };
}

/** A lesson as plain data, the shape of a lesson file. */
export function lessonToData(lesson: Lesson): Data {
  const limbs = changed(lesson.limbs, PLAIN_LIMBS);
  const how = howToData(lesson.how);
  const sheet = changed(lesson.sheet, DEFAULT_SHEET);
  const { exercises, exerciseBalance, playedWith, ...played } = playedToData(lesson);
  const isOther = !isSame(exerciseBalance, played.balance);
  const divided = lesson.sections.map((section) => lessonSectionToData(section, lesson));
  return {
    version: lesson.version,
    title: lesson.title,
    ...(lesson.id === null ? {} : { id: lesson.id }),
    ...(lesson.from === null ? {} : { from: lesson.from }),
    ...(lesson.by === null ? {} : { by: lesson.by }),
    ...(lesson.text === null ? {} : { text: lesson.text }),
    ...mediaToData(lesson),
    setUp: lesson.setUp,
    ...(playedWith === 'sticks' ? {} : { playedWith }),
    ...played,
    ...(isOther ? { exerciseBalance } : {}),
    ...(Object.keys(limbs).length > 0 ? { limbs } : {}),
    ...(Object.keys(how).length > 0 ? { how } : {}),
    ...(divided.length > 0 ? { sections: divided } : { exercises }),
    ...(Object.keys(sheet).length > 0 ? { sheet } : {}),
    ...(lesson.practicePage === null ? {} : { practicePage: lesson.practicePage }),
  };
}

/** The text of a lesson file that reads back as this lesson. */
export function printLesson(lesson: Lesson): string {
  return new Document(lessonToData(lesson), { aliasDuplicateObjects: false }).toString(PRINT);
}
