/** MIDI and MusicXML, one file an exercise and one for the sheet. */
import type { Lesson } from '@shedbook/core';
import { writeMidi, writeMidiSheet, writeMusicXml } from '@shedbook/exchange';
import { fileNumber, type Outbox } from './outbox.ts';
import { performForMidi } from './perform-exercise.ts';
import type { BuildRequest } from './request.ts';

function exerciseTitle(lesson: Lesson, number: number): string {
  const name = lesson.exercises.find((exercise) => exercise.number === number)?.name;
  return `${lesson.title}, exercise ${number}${name ? `: ${name}` : ''}`;
}

/** Writes the standard files of the exercises that were asked for. */
export async function writeStandardFiles(
  lesson: Lesson,
  request: BuildRequest,
  outbox: Outbox,
): Promise<void> {
  const { meter, by } = lesson;
  const { bpm, exercises } = request;
  const sections = exercises.map((number) => ({
    name: String(number),
    performance: performForMidi(lesson, number, request),
  }));
  for (const [index, number] of exercises.entries()) {
    const name = `exercises/${fileNumber(number, lesson.exercises.length)}`;
    const section = sections[index];
    if (!section) continue;
    const midi = writeMidi(section.performance, { title: exerciseTitle(lesson, number), by, meter });
    await outbox.put(`${name}.mid`, 'midi', number, midi);
    await outbox.put(
      `${name}.musicxml`,
      'musicxml',
      number,
      writeMusicXml(lesson, { exercises: [number], bpm }),
    );
  }
  await outbox.put('sheet.mid', 'midi', null, writeMidiSheet(sections, { title: lesson.title, by, meter }));
  await outbox.put('sheet.musicxml', 'musicxml', null, writeMusicXml(lesson, { exercises, bpm }));
}
