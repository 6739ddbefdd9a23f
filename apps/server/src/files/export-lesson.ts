/** A lesson as a standard file: every exercise in its first form, one after another. */
import { type Form, type Lesson, perform } from '@shedbook/core';
import { writeMidiSheet, writeMusicXml } from '@shedbook/exchange';

/** Formats that a lesson is written in. */
export type ExportFormat = 'musicxml' | 'midi';

/** Ending and media type of each format. Source: IANA media types registry; MusicXML 4.0, file formats. */
export const EXPORT_FACTS: Readonly<
  Record<ExportFormat, { readonly ending: string; readonly type: string }>
> = {
  musicxml: { ending: '.musicxml', type: 'application/vnd.recordare.musicxml+xml' },
  midi: { ending: '.mid', type: 'audio/midi' },
};

/** One time through the pattern, no count-in: what stands on the page. */
function once(bars: number): Form {
  return { name: 'once', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

function sectionsOf(lesson: Lesson) {
  const exercises = lesson.exercises.map(({ number, name, parts }) => ({
    name: name ?? String(number),
    performance: perform(lesson, { exercise: number, form: once(parts[0]?.pattern.bars.length ?? 1) }),
  }));
  if (exercises.length > 0) return exercises;
  return [{ name: lesson.title, performance: perform(lesson, { exercise: null, form: once(1) }) }];
}

/** The file's content. */
export function exportLesson(lesson: Lesson, format: ExportFormat): string | Uint8Array {
  if (format === 'musicxml') return writeMusicXml(lesson);
  const { title, by, meter } = lesson;
  return writeMidiSheet(sectionsOf(lesson), { title, by, meter });
}
