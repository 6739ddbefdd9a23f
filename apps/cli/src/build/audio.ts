/** Recordings of exercises. */
import type { Lesson } from '@shedbook/core';
import { loadKit, loadSpokenWords } from '@shedbook/host';
import { makeRecording, planRecordings, RECORDING_RATE_HZ } from '@shedbook/pack';
import type { Speaker } from '../terminal.ts';
import type { Outbox } from './outbox.ts';
import type { BuildRequest } from './request.ts';

/** Records the exercises that were asked for; does nothing where no sound is. */
export async function writeAudio(
  lesson: Lesson,
  { audio, ...request }: BuildRequest,
  outbox: Outbox,
  terminal: Speaker,
): Promise<void> {
  if (audio === null) return;
  const kit = await loadKit(request.kit, RECORDING_RATE_HZ);
  const language = terminal.catalogue.tag;
  const words = request.countAloud ? await loadSpokenWords(language, RECORDING_RATE_HZ) : null;
  const asked = { ...request, format: audio, words };
  const { recording: progress } = terminal.catalogue.words.build;
  const recordings = planRecordings(lesson, asked);
  for (const [index, recording] of recordings.entries()) {
    terminal.progress(progress({ n: index + 1, of: recordings.length }));
    await outbox.put(await makeRecording(lesson, recording, asked, kit));
  }
}
