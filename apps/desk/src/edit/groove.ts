/** Changing the groove: voices, what they play, how loud they are. */
import { editLesson, formatPattern, type Lesson, type Pattern, type Voice } from '@shedbook/core';
import { parseDocument } from 'yaml';

/** The text with another pattern for a voice of the groove; a level written beside it stays. */
export function setVoicePattern(text: string, voice: Voice, pattern: Pattern): string {
  const written = parseDocument(text).getIn(['groove', voice, 'pattern']);
  const path = written === undefined ? ['groove', voice] : ['groove', voice, 'pattern'];
  return editLesson(text, path, formatPattern(pattern));
}

/** The text with the groove that the lesson has, written out where it was left to the default. */
function writeGroove(text: string, lesson: Lesson): string {
  if (parseDocument(text).has('groove')) return text;
  return lesson.groove.reduce(
    (written, part) => editLesson(written, ['groove', part.voice], formatPattern(part.pattern)),
    text,
  );
}

/** The text with a change to one voice of the groove. */
export function changeVoice(text: string, lesson: Lesson, voice: Voice, pattern: Pattern): string {
  return setVoicePattern(writeGroove(text, lesson), voice, pattern);
}

/** The text with one more voice in the groove, silent at first. */
export function addVoice(text: string, lesson: Lesson, voice: Voice): string {
  const slots = lesson.groove[0]?.pattern.bars[0]?.map((each) => each.marks.length) ?? [];
  const bar = lesson.meter.beats.map((_, beat) => {
    const marks = Array.from({ length: slots[beat] ?? 1 }, () => '.' as const);
    return { text: marks.join(''), marks };
  });
  return changeVoice(text, lesson, voice, { bars: [bar] });
}

/** The text without a voice of the groove. */
export function removeVoice(text: string, lesson: Lesson, voice: Voice): string {
  return editLesson(writeGroove(text, lesson), ['groove', voice], undefined);
}

/** The text with a level for a voice, in dB relative to the lead voice. */
export function setLevel(text: string, voice: Voice, levelDb: number): string {
  return editLesson(text, ['balance', voice], levelDb);
}
