/** Why a loop was not clean, in the reader's language. */

import { countSyllable, type Lesson, perform, type Subdivision, type WrittenPlace } from '@shedbook/core';
import { limbName, type Reason } from '@shedbook/judge';
import type { HearingWords } from '@shedbook/words';
import { type PlayedTask, studentForm } from '../ear/judge-loop.ts';

/** Slots of the beat that a voice has at a place: its syllable depends on them. */
function slotsAt({ lesson, exercise, form }: PlayedTask, reason: Reason): Subdivision | null {
  const { place, voice } = reason;
  if (!place || !voice) return null;
  const { strokes } = perform(lesson, { exercise, form: studentForm(form) });
  const isThere = ({ written }: { readonly written: WrittenPlace }) =>
    written.bar === place.bar && written.beat === place.beat && written.slot === place.slot;
  return strokes.find((stroke) => stroke.voice === voice && isThere(stroke))?.slots ?? null;
}

function bars(form: PlayedTask['form']): number {
  return form.sections.reduce((sum, section) => sum + section.bars, 0);
}

function whereOf(task: PlayedTask, reason: Reason, words: HearingWords): string | null {
  const { place } = reason;
  if (!place) return null;
  const slots = slotsAt(task, reason) ?? 1;
  const syllable = place.slot === 1 ? null : countSyllable(place.beat - 1, place.slot - 1, slots);
  return words.place(syllable, place.beat, bars(task.form) > 1 ? place.bar : null);
}

function whoOf(lesson: Lesson, reason: Reason, words: HearingWords): string | null {
  if (!reason.voice) return null;
  const limb = limbName(lesson.limbs[reason.voice], lesson.setUp);
  return words.who(words.limbs[limb] ?? limb, words.voices[reason.voice]);
}

/** A sentence for a reason. */
export function sayReason(task: PlayedTask, reason: Reason, words: HearingWords): string {
  return words.reason({
    kind: reason.kind,
    amount: reason.amount,
    who: whoOf(task.lesson, reason, words),
    where: whereOf(task, reason, words),
    lead: words.voices[task.lesson.lead],
  });
}
