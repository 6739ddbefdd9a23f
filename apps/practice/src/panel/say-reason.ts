/** Why a loop was not clean, in the reader's language. */

import {
  type Lesson,
  type PlaceFact,
  perform,
  placeInBar,
  type Subdivision,
  type Voice,
  type WrittenPlace,
} from '@shedbook/core';
import { limbName, type Reason } from '@shedbook/judge';
import { capital, type HearingCatalogue, type HearingWords, nameIn, say } from '@shedbook/words';
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

function placeOf(task: PlayedTask, reason: Reason): PlaceFact | null {
  const { place } = reason;
  if (!place) return null;
  const inBar = placeInBar(place.beat - 1, place.slot - 1, slotsAt(task, reason) ?? 1);
  return bars(task.form) > 1 ? { fact: 'in-bar', place: inBar, bar: place.bar } : inBar;
}

function whoOf(lesson: Lesson, voice: Voice, words: HearingWords): string {
  const limb = capital(nameIn(words.limbs, limbName(lesson.limbs[voice], lesson.setUp)));
  return words.who({ limb, voice });
}

/** A sentence for a reason. */
export function sayReason(task: PlayedTask, reason: Reason, { words, language }: HearingCatalogue): string {
  const { kind, amount, voice } = reason;
  const { reasons } = words;
  if (kind === 'slow' || kind === 'fast' || voice === null)
    return reasons[kind === 'slow' ? 'slow' : 'fast']({ amount });
  const who = whoOf(task.lesson, voice, words);
  const fact = placeOf(task, reason);
  const place = fact && say(fact, language);
  const where = place === null ? reasons.throughout : reasons.on({ place });
  if (kind === 'missed') return reasons.missed({ who, where });
  if (kind === 'extra') return place === null ? reasons.extra({ who }) : reasons.extraNear({ who, place });
  if (kind === 'loud' || kind === 'quiet') return reasons[kind]({ who, amount, lead: task.lesson.lead });
  return reasons[kind]({ who, amount, where });
}
