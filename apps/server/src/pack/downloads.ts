/** What a student takes along from a pack: the printed sheet, standard files, and the lesson itself. */
import { barsOf, type Form, type Lesson, perform } from '@shedbook/core';
import { type Engraver, type Fonts, layOutSheet, writePdf } from '@shedbook/engrave';
import { writeMidi, writeMidiSheet, writeMusicXml } from '@shedbook/exchange';
import { codeOption } from '../sheet/code.ts';
import { type PackFile, padded, textFile } from './file.ts';
import type { PackDownload } from './pack.ts';

/** A file and what it is. */
export interface Download extends PackFile {
  readonly kind: PackDownload['kind'];
  readonly exercise: number | null;
}

/** Once through the pattern, without a count-in: what a standard file says of an exercise. */
function onceThrough(bars: number): Form {
  return { name: 'once', sections: [{ play: 'pattern', bars, ending: null }], repeat: 1, countInBars: 0 };
}

/** The printed sheet. */
export async function printSheet(
  lesson: Lesson,
  { engraver, fonts }: { readonly engraver: Engraver; readonly fonts: Fonts },
): Promise<Download> {
  const sheet = layOutSheet(lesson, { engraver, fonts, ...codeOption(lesson) });
  const { title, by } = sheet;
  const content = await writePdf(sheet.pages, fonts, { title, author: by });
  return { path: 'files/sheet.pdf', kind: 'sheet', exercise: null, content };
}

/** MIDI and MusicXML of the sheet and of each exercise. */
export function writeStandardFiles(lesson: Lesson): readonly Download[] {
  const { title, by, meter, exercises } = lesson;
  const sections = exercises.map((exercise) => ({
    number: exercise.number,
    name: exercise.name ?? String(exercise.number),
    performance: perform(lesson, { exercise: exercise.number, form: onceThrough(barsOf(exercise)) }),
  }));
  if (sections.length === 0) return [];
  const each = sections.flatMap(({ number, performance }): readonly Download[] => {
    const name = `files/exercises/${padded(number, exercises.length)}`;
    const midi = writeMidi(performance, { title: `${title}, exercise ${number}`, by, meter });
    const xml = textFile(`${name}.musicxml`, writeMusicXml(lesson, { exercises: [number] }));
    return [
      { path: `${name}.mid`, kind: 'midi', exercise: number, content: midi },
      { ...xml, kind: 'musicxml', exercise: number },
    ];
  });
  const sheetMidi = writeMidiSheet(sections, { title, by, meter });
  return [
    { path: 'files/sheet.mid', kind: 'midi', exercise: null, content: sheetMidi },
    { ...textFile('files/sheet.musicxml', writeMusicXml(lesson)), kind: 'musicxml', exercise: null },
    ...each,
  ];
}
