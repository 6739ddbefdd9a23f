/**
 * A form in a sentence.
 * For example: formText(form) // '4 bars of the pattern, the last ending on rim shot + crash on the last slot of 4; then 2 bars of time; all of it twice.'
 */
import {
  countSyllable,
  type Ending,
  type Form,
  type FormSection,
  type Subdivision,
  struckSlots,
  VOICE_FACTS,
} from '@shedbook/core';

const PLAYS: Readonly<Record<FormSection['play'], string>> = {
  pattern: 'the pattern',
  time: 'time',
  rest: 'rest',
};

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** Which slot of a beat, in words. */
function slotText(slot: number, slots: number, beat: number): string {
  if (slot === 0) return `${beat}`;
  const name = slot === slots - 1 ? 'last' : (ORDINALS[slot] ?? `${slot + 1}th`);
  return `the ${name} slot of ${beat} (“${countSyllable(beat - 1, slot, slots as Subdivision)}”)`;
}

function endingText(ending: Ending): string {
  const voices = ending.voices.map((voice) => VOICE_FACTS[voice].label).join(' + ');
  const slots = struckSlots(ending.cell).map((slot) => slotText(slot, ending.cell.marks.length, ending.beat));
  return slots.length === 0 ? `a rest on ${ending.beat}` : `${voices} on ${slots.join(' and ')}`;
}

function sectionText(section: FormSection): string {
  const bars = `${section.bars} ${section.bars === 1 ? 'bar' : 'bars'} of ${PLAYS[section.play]}`;
  if (!section.ending) return bars;
  return `${bars}, ${section.bars === 1 ? '' : 'the last '}ending on ${endingText(section.ending)}`;
}

/** The form's sections in order, and how often. */
export function formText(form: Form): string {
  const sections = form.sections.map(sectionText).join('; then ');
  const times =
    form.repeat === 1 ? '' : form.repeat === 2 ? '; all of it twice' : `; all of it ${form.repeat} times`;
  return `${sections}${times}.`;
}
