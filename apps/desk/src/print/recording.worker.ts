/** Makes recordings beside the page, as the command line makes them: one as its file, several as a zip. */
import { Bpm, formNamed, type Lesson, lessonKey, parseLesson } from '@shedbook/core';
import { makeRecording, planRecordings, RECORDING_RATE_HZ, type RecordingRequest } from '@shedbook/pack';
import { createKit, type Kit, RECORDING_LUFS, spokenAt } from '@shedbook/sound';
import { zipSync } from 'fflate';
import type { RecordOrder, RecordReport } from './recording-messages.ts';

function tell(report: RecordReport): void {
  self.postMessage(report);
}

function requestOf(lesson: Lesson, { form, bpm, click, spoken, ...order }: RecordOrder): RecordingRequest {
  return {
    ...{ format: order.format, exercises: order.exercises, layers: order.layers },
    ...{ mute: [], dry: false, loudnessLufs: RECORDING_LUFS },
    bpm: bpm === null ? null : Bpm(bpm),
    form: form === null ? null : formNamed(lesson, form),
    click: click ? {} : null,
    words: spoken && spokenAt(spoken.language, [spoken.samples], RECORDING_RATE_HZ),
  };
}

/** What a player of files shows: the lesson's name before the number of the exercise. */
function fileName(lesson: Lesson, path: string): string {
  return `${lessonKey(lesson)}-${path.slice(path.lastIndexOf('/') + 1)}`;
}

let kept: Kit | null = null;

/** The kit, made once: several orders come to one thread. */
function keptKit(): Kit {
  kept ??= createKit({ sampleRateHz: RECORDING_RATE_HZ });
  return kept;
}

async function make(order: RecordOrder): Promise<void> {
  const { lesson } = parseLesson(order.text, 'lesson');
  if (!lesson) throw new RangeError('Internal error: recordings of a lesson that cannot be read');
  const request = requestOf(lesson, order);
  const planned = planRecordings(lesson, request);
  const kit = keptKit();
  const files: Record<string, Uint8Array> = {};
  for (const [index, recording] of planned.entries()) {
    tell({ kind: 'making', number: index + 1, total: planned.length });
    const { path, content } = await makeRecording(lesson, recording, request, kit);
    files[fileName(lesson, path)] = content as Uint8Array;
  }
  const [[name, content] = [], ...others] = Object.entries(files);
  if (name && content && others.length === 0)
    tell({ kind: 'made', name, content: content as Uint8Array<ArrayBuffer> });
  // Sound does not become smaller in a zip.
  else
    tell({
      kind: 'made',
      name: `${lessonKey(lesson)}.zip`,
      content: zipSync(files, { level: 0 }) as Uint8Array<ArrayBuffer>,
    });
}

self.onmessage = ({ data }: MessageEvent<RecordOrder>) => {
  // What fails is told to whoever waits: an order that nobody answers would seem to go on.
  make(data).catch(reportError);
};
