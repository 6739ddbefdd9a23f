/**
 * Playing on one surface, a pad or a table: the exercise's rhythm alone is asked for, on one voice.
 *
 * Conventions: several parts of an exercise become one; where both strike, one stroke is asked for. Marks that ask for
 * another sound become plain strokes, and the fixed accent of a form is struck on the same surface.
 */
import { strikeOf } from '../kit/strike.ts';
import type { Limb, Voice } from '../kit/voice.ts';
import { type Cell, cell, isAccent, isRest, isStruck, type Mark } from '../rhythm/cell.ts';
import { type HandedSlot, handedParts, withoutSlots } from './handed.ts';
import { handsOf, handsTogether } from './hands.ts';
import type { Exercise, Form, Lesson } from './lesson.ts';
import { sectionOf } from './section.ts';

/** What can be played on. */
export const SURFACES = ['kit', 'pad'] as const;

/** What is played on. */
export type Surface = (typeof SURFACES)[number];

/** What is to be played of a lesson. */
interface Asked {
  readonly lesson: Lesson;
  readonly exercise: number | null;
  readonly form: Form;
}

type Beat = readonly HandedSlot[];

/** What two voices strike in one slot: one stroke, by the hand of either or by both. */
function oneStroke(own: HandedSlot, beside: HandedSlot): HandedSlot {
  if (!isStruck(own.mark)) return beside;
  const hands = [own, beside].flatMap(({ hand }) => hand ?? []);
  return { mark: own.mark, hand: hands.length > 0 ? handsTogether(hands) : null };
}

/** Strokes of two voices in one beat, in the finer subdivision; the first alone where neither divides the other. */
function together(first: Beat, other: Beat): Beat {
  const [finer, coarser] = first.length >= other.length ? [first, other] : [other, first];
  const step = finer.length / coarser.length;
  if (!Number.isInteger(step)) return first;
  return finer.map((slot, at) => {
    const beside = at % step === 0 ? coarser[at / step] : undefined;
    return beside ? oneStroke(slot, beside) : slot;
  });
}

function plainMark(mark: Mark, voice: Voice): Mark {
  if (!isStruck(mark) || strikeOf(voice, mark)?.voice === voice) return mark;
  return isAccent(mark) ? 'X' : 'x';
}

function plain(of: Cell, voice: Voice): Cell {
  return cell(of.marks.map((mark) => plainMark(mark, voice)).join(''));
}

/** All of an exercise on one voice; hands are none where a voice that is asked for too has none. */
function onOne(exercise: Exercise, voice: Voice): Exercise {
  const [first, ...others] = handedParts(exercise);
  if (!first) return exercise;
  const isHanded = exercise.parts.every(
    ({ pattern }, part) => handsOf(exercise, part) !== null || pattern.bars.flat().every(isRest),
  );
  const slotOn = ({ mark, hand }: HandedSlot) => ({
    mark: plainMark(mark, voice),
    hand: isHanded ? hand : null,
  });
  const bars = first.bars.map((beats, bar) =>
    beats.map((own, beat) => {
      const all = others.reduce((sum, part) => together(sum, part.bars[bar]?.[beat] ?? []), own);
      return all.map(slotOn);
    }),
  );
  return { ...exercise, ...withoutSlots([{ voice, bars }]) };
}

function partsOf(lesson: Lesson, exercise: number | null) {
  return sectionOf(lesson, exercise).exercises.find(({ number }) => number === exercise)?.parts ?? [];
}

/** The voice that every stroke on the pad is; null where there is no exercise. */
export function padVoice(lesson: Lesson, exercise: number | null): Voice | null {
  return partsOf(lesson, exercise)[0]?.voice ?? null;
}

/** The limbs of an exercise's own parts: those that somebody on a pad plays. */
export function padLimbs(lesson: Lesson, exercise: number | null): readonly Limb[] {
  const { limbs } = sectionOf(lesson, exercise);
  return [...new Set(partsOf(lesson, exercise).map(({ voice }) => limbs[voice]))];
}

function lessonOnPad(lesson: Lesson, voice: Voice): Lesson {
  return {
    ...lesson,
    groove: [],
    exercises: lesson.exercises.map((exercise) => onOne(exercise, voice)),
    sections: lesson.sections.map((section) => lessonOnPad(section, voice)),
  };
}

function formOnPad(form: Form, voice: Voice): Form {
  const sections = form.sections.map((section) =>
    section.ending
      ? {
          ...section,
          ending: { ...section.ending, cell: plain(section.ending.cell, voice), voices: [voice] },
        }
      : section,
  );
  return { ...form, sections };
}

/** The same as it is asked on a pad: all on the voice of the exercise, and nothing under it; as it is without one. */
export function ontoPad<T extends Asked>(asked: T): T {
  const voice = padVoice(asked.lesson, asked.exercise);
  if (voice === null) return asked;
  return { ...asked, lesson: lessonOnPad(asked.lesson, voice), form: formOnPad(asked.form, voice) };
}
