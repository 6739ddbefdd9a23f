/** What is done with a beat, a bar or exercises: loaded when it is first asked for. */
import { type Lesson, sectionOf, type Voice } from '@shedbook/core';
import { remember, remembered, type Say } from '@shedbook/stand';
import type { DeskWords } from '@shedbook/words';
import type { LessonDocument } from '../document/lesson-document.ts';
import {
  type Copied,
  copyExercises,
  pastedExercises,
  plainText,
  printCopied,
  readCopied,
} from '../edit/clipboard.ts';
import {
  changeExercises,
  homeOf,
  type InUse,
  removeExercises,
  type Unnumbered,
  withExercises,
} from '../edit/exercises.ts';
import {
  backwards,
  ontoVoice,
  shifted,
  snippetOf,
  type Unit,
  withoutSnippet,
  withSnippet,
} from '../edit/rearrange.ts';
import { type Chosen, COPIED_KEY, type Rearranging } from './rearranging.ts';

/** What it is done with. */
export interface Ground {
  readonly document: LessonDocument;
  readonly lesson: Lesson;
  readonly inUse: InUse;
  readonly chosen: Chosen;
  readonly unit: Unit;
  /** Numbers of the exercises that are selected, the chosen one among them, in order. */
  readonly numbers: readonly number[];
  readonly words: DeskWords;
  readonly say: Say;
  /** Told which exercise (its index) is chosen afterwards, where others came or went. */
  readonly onGo: (index: number) => void;
}

function keep(next: Copied): void {
  remember(COPIED_KEY, printCopied(next));
  // Other programs get the pattern texts, where the browser allows it.
  void navigator.clipboard?.writeText(plainText(next)).catch(() => undefined);
}

/** The number of the chosen exercise. */
function numberOf({ lesson, chosen }: Ground): number {
  return lesson.exercises[chosen.index]?.number ?? 1;
}

function change(ground: Ground, how: Parameters<typeof changeExercises>[3]): void {
  const { document, lesson, unit, numbers, inUse } = ground;
  const which = unit === 'exercise' ? numbers : [numberOf(ground)];
  document.edit(changeExercises(document.state().text, lesson, which, how, inUse));
}

function undoOf({ document, words }: Ground) {
  return { label: words.desk.undo, run: () => void document.undo() };
}

function takeExercises(ground: Ground, isCut: boolean): void {
  const { document, lesson, numbers, words, say, onGo } = ground;
  const { meter } = sectionOf(lesson, numberOf(ground));
  const exercises = lesson.exercises.filter(({ number }) => numbers.includes(number));
  const told = { n: exercises.length };
  keep(copyExercises(lesson, { meter }, exercises, isCut));
  if (!isCut) {
    say(words.rearrange.copiedExercises(told));
    return;
  }
  document.edit(removeExercises(document.state().text, lesson, numbers));
  onGo(
    Math.max(
      0,
      lesson.exercises.findIndex(({ number }) => number === numbers[0]),
    ),
  );
  say(words.rearrange.cutExercises(told), undoOf(ground));
}

function take(ground: Ground, isCut: boolean): void {
  const { lesson, unit, chosen, words, say } = ground;
  const exercise = lesson.exercises[chosen.index];
  if (!exercise) return;
  if (unit === 'exercise') {
    takeExercises(ground, isCut);
    return;
  }
  const { meter } = sectionOf(lesson, exercise.number);
  keep({ ...snippetOf(exercise, unit, chosen.place), beats: meter.beats.length });
  if (isCut) change(ground, (each) => withoutSnippet(each, { unit, place: chosen.place }));
  say(words.rearrange.copied[unit]);
}

function paste(ground: Ground): void {
  const { document, lesson, chosen, inUse, words, say, onGo } = ground;
  const copied = readCopied(remembered(COPIED_KEY));
  if (!copied) return;
  const { text } = document.state();
  const { section, at, index } = homeOf(lesson, chosen.index);
  const beats = section.meter.beats.length;
  if (copied.unit !== 'beat' && copied.beats !== beats) {
    say(words.rearrange.otherMeter({ found: copied.beats, expected: beats }));
  } else if (copied.unit === 'exercise') {
    const added = pastedExercises(copied, lesson);
    const isEmpty = lesson.exercises.length === 0;
    const all: readonly Unnumbered[] = section.exercises;
    document.edit(withExercises(text, section, all.toSpliced(isEmpty ? 0 : at + 1, 0, ...added), index));
    onGo(isEmpty ? 0 : chosen.index + 1);
    say(words.rearrange.pasted({ n: added.length }), undoOf(ground));
  } else {
    const put = (each: Unnumbered) => withSnippet(each, copied, chosen.place);
    document.edit(changeExercises(text, lesson, [numberOf(ground)], put, inUse));
  }
}

/** The lesson as it is now: presses may come faster than the page is drawn. */
function upToDate(ground: Ground): Ground {
  return { ...ground, lesson: ground.document.state().lesson ?? ground.lesson };
}

/** Does it. */
export function rearrange(what: Rearranging, given: Ground): void {
  const ground = upToDate(given);
  const stretch = { unit: ground.unit, place: ground.chosen.place };
  if (what === 'copy' || what === 'cut') take(ground, what === 'cut');
  else if (what === 'paste') paste(ground);
  else if (what === 'backwards') change(ground, (each) => backwards(each, stretch));
  else change(ground, (each) => shifted(each, stretch, what === 'later' ? 1 : -1));
}

/** Lets another voice play the part that is written in. */
export function putOnVoice(voice: Voice, given: Ground): void {
  const ground = upToDate(given);
  const { part } = ground.chosen;
  change(ground, (each) => ontoVoice(each, Math.min(part, each.parts.length - 1), voice));
}
