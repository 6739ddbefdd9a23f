/**
 * A form in a sentence.
 * For example: formText(form, words) // '4 bars of the pattern, the last ending on rim shot + crash on the last triplet of 4; then 2 bars of time; all of it twice.'
 */
import {
  countSyllable,
  type Ending,
  type Form,
  type FormSection,
  type Subdivision,
  struckSlots,
  type Voice,
} from '@shedbook/core';
import type { form as english } from '../english/sheet.ts';
import type { Spoken } from '../message/speak.ts';

/** What the sentence is made of. */
export interface FormWords {
  readonly voices: Readonly<Record<Voice, string>>;
  readonly form: Spoken<typeof english>;
}

/** Slots of a beat that has words of its own for them. */
const TRIPLET = 3;

/** Which slot of a beat, in the words of the trade: the last triplet, the “&”. */
function slotText(slot: number, slots: number, beat: number, { form }: FormWords): string {
  const syllable = countSyllable(slot, slots as Subdivision);
  if (syllable === null) return form.beat({ beat });
  if (slots === TRIPLET) return slot === 1 ? form.middleTriplet({ beat }) : form.lastTriplet({ beat });
  return form.slot({ beat, syllable });
}

function endingText({ voices, cell, beat }: Ending, words: FormWords): string {
  const places = struckSlots(cell).map((slot) => slotText(slot, cell.marks.length, beat, words));
  if (places.length === 0) return words.form.restOn({ beat });
  return words.form.strokesOn({ voices: voices.map((voice) => words.voices[voice]).join(' + '), places });
}

/** Bars with what the form says of the click in them. */
function clickedText(section: string, click: FormSection['click'], { form }: FormWords): string {
  if (!click) return section;
  return click.length === 0
    ? form.unclicked({ section })
    : form.clicked({ section, beats: click.map(String) });
}

function sectionText({ play, bars, ending, click }: FormSection, words: FormWords): string {
  const { form } = words;
  const section = clickedText(form[play]({ bars }), click, words);
  if (!ending) return section;
  const strokes = endingText(ending, words);
  return bars === 1 ? form.ending({ section, strokes }) : form.lastEnding({ section, strokes });
}

/** The form's sections in order, and how often. */
export function formText({ sections, repeat }: Form, words: FormWords): string {
  const told = sections.map((section) => sectionText(section, words));
  const all = told.reduce((before, section) => words.form.next({ before, section }));
  return words.form.whole({ sections: all, times: repeat });
}
