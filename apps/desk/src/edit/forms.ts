/** Phrase forms: which ones a lesson brings itself, and changing them. */
import {
  type Cell,
  cell,
  defaultEndingCell,
  type Ending,
  editLesson,
  endingVoices,
  type Form,
  type FormSection,
  formToData,
  isStruck,
  type Lesson,
  type Voice,
} from '@shedbook/core';
import { isMap, parseDocument } from 'yaml';

/** Names of the forms that are written in a text. */
export function ownForms(text: string): readonly string[] {
  const forms = parseDocument(text).get('forms');
  return isMap(forms) ? forms.items.map((item) => String(item.key)) : [];
}

/** The text with a form under its name; one that every lesson has becomes this lesson's own. */
export function setForm(text: string, form: Form): string {
  return editLesson(text, ['forms', form.name], formToData(form));
}

/** The text without a form of its own: one that every lesson has is again as everywhere. */
export function removeForm(text: string, name: string): string {
  const own = ownForms(text);
  if (own.length === 1 && own[0] === name) return editLesson(text, ['forms'], undefined);
  return editLesson(text, ['forms', name], undefined);
}

/** The text with a form called something else, where it stands. */
export function renameForm(text: string, form: Form, name: string): string {
  return setForm(removeForm(text, form.name), { ...form, name });
}

/** A name that no form of the lesson has: the one that is wished for, or with a number behind it. */
export function freeName({ forms }: Pick<Lesson, 'forms'>, wished: string): string {
  const taken = new Set(forms.map(({ name }) => name.toLowerCase()));
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? wished : `${wished} ${n}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

/** The form with another section at a place; without that section where it is null. */
export function withSection(form: Form, index: number, section: FormSection | null): Form {
  const sections = section ? form.sections.with(index, section) : form.sections.toSpliced(index, 1);
  return sections.length === 0 ? form : { ...form, sections };
}

/** The form with one more section behind the others: the groove alone after the exercise, and the other way. */
export function withOneMore(form: Form): Form {
  const last = form.sections.at(-1);
  const play = last?.play === 'pattern' ? 'time' : 'pattern';
  return { ...form, sections: [...form.sections, { play, bars: last?.bars ?? 4, ending: null }] };
}

/** The form with a section one place further up (-1) or down (1). */
export function withSectionMoved(form: Form, index: number, by: -1 | 1): Form {
  const moved = form.sections[index];
  const to = index + by;
  if (!moved || to < 0 || to >= form.sections.length) return form;
  return { ...form, sections: form.sections.toSpliced(index, 1).toSpliced(to, 0, moved) };
}

/** The ending that a section is given first: on the last slot of the bar. */
export function firstEnding(lesson: Pick<Lesson, 'meter' | 'groove' | 'playedWith'>): Ending {
  const beat = lesson.meter.beats.length;
  const slots = lesson.groove[0]?.pattern.bars[0]?.[beat - 1]?.marks.length ?? 1;
  return { beat, cell: defaultEndingCell(Math.max(2, slots)), voices: endingVoices(lesson.playedWith) };
}

/** The ending with a slot (from 0) struck or not; the last stroke stays. */
export function withSlot(ending: Ending, slot: number): Ending {
  const marks = ending.cell.marks.map((mark, i) => (i === slot ? (isStruck(mark) ? '.' : 'X') : mark));
  return marks.some(isStruck) ? { ...ending, cell: cell(marks.join('')) } : ending;
}

/** The ending with its beat divided in another number of slots, an accent on the last one. */
export function withSlots(ending: Ending, slots: number): Ending {
  const next: Cell = defaultEndingCell(slots);
  return { ...ending, cell: next };
}

/** The ending with a voice in it or not; the last voice stays. */
export function withVoiceStruck(ending: Ending, voice: Voice): Ending {
  const there = ending.voices.includes(voice);
  const voices = there ? ending.voices.filter((each) => each !== voice) : [...ending.voices, voice];
  return voices.length > 0 ? { ...ending, voices } : ending;
}
