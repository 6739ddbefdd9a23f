/** `shedbook hear`: writes down what is played in a recording, without a lesson. */
import { basename } from 'node:path';
import {
  Bpm,
  type ExercisePart,
  formatFeel,
  formatPattern,
  type GroovePart,
  parseMeter,
  readFeel,
  type Voice,
} from '@shedbook/core';
import type { KitKeys } from '@shedbook/exchange';
import { decodeSound, InputError } from '@shedbook/host';
import {
  type Known,
  lessonOfTranscript,
  strokesSent,
  TakeListener,
  type Transcribed,
  type Transcript,
  transcribeNotes,
} from '@shedbook/listen';
import { say } from '@shedbook/words';
import { isMidi, readKeysFile, readMidiTake } from '../listen/midi-take.ts';
import { refuseOption } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface HearRequest {
  readonly take: string;
  /** Quarter notes a minute, about. */
  readonly tempo?: number;
  readonly meter?: string;
  readonly feel?: string;
  readonly title?: string;
  /** A file with the keys of the electronic kit that the take is from. */
  readonly keys?: string;
  /** Where to keep what was heard, as a lesson. */
  readonly out?: string;
  readonly json?: boolean;
}

function knownOf({ tempo, meter, feel }: HearRequest): Known {
  const read = <T>(option: 'meter' | 'feel', text: string, of: (text: string) => T | null): T =>
    of(text) ?? refuseOption(option, text, (expected) => expected[option]);
  return {
    ...(tempo === undefined ? {} : { bpm: Bpm(tempo) }),
    ...(meter === undefined ? {} : { meter: read('meter', meter, parseMeter) }),
    ...(feel === undefined ? {} : { feel: read('feel', feel, readFeel) }),
  };
}

async function transcribed(
  path: string,
  known: Known,
  keys: KitKeys,
  terminal: Speaker,
): Promise<Transcribed> {
  if (await isMidi(path)) {
    const { notes } = await readMidiTake(path, keys, terminal);
    return transcribeNotes(strokesSent(notes), known);
  }
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = new TakeListener(sampleRateHz);
  for await (const block of blocks) listener.push(block);
  return listener.transcribe(known);
}

function textsOf(parts: readonly (ExercisePart | GroovePart)[]): Readonly<Record<string, string>> {
  return Object.fromEntries(parts.map(({ voice, pattern }) => [voice, formatPattern(pattern)]));
}

function jsonOf(heard: Transcript, lesson: string) {
  return {
    meter: heard.meter.text,
    bpm: heard.bpm,
    feel: formatFeel(heard.feel),
    groove: textsOf(heard.groove),
    comping: heard.comping,
    exercises: heard.exercises.map(({ number, parts }) => ({ number, parts: textsOf(parts) })),
    bars: heard.bars.map(({ startSeconds, durationSeconds }, index) => ({
      bar: index + 1,
      startSeconds,
      durationSeconds,
      voices: Object.fromEntries(
        heard.parts.map(({ voice, pattern }) => [voice, formatPattern({ bars: [pattern.bars[index]!] })]),
      ),
    })),
    levelDb: heard.levelDb,
    assumed: heard.assumed.map(({ timeSeconds, voice, under }) => ({ timeSeconds, voice, under })),
    misfits: heard.misfits.map(({ timeSeconds, voice }) => ({ timeSeconds, voice })),
    lesson,
  };
}

const VOICE_WIDTH = 14;

function partLines(parts: readonly (ExercisePart | GroovePart)[], terminal: Speaker): readonly string[] {
  const { voices } = terminal.catalogue.language.tongue;
  const name = (voice: Voice) => `  ${voices[voice].padEnd(VOICE_WIDTH)}`;
  return parts.map(({ voice, pattern }) => `${name(voice)}${formatPattern(pattern)}`);
}

function linesOf(heard: Transcript, terminal: Speaker): readonly string[] {
  const { hear } = terminal.catalogue.words;
  const { meter, bpm, feel, bars, groove, exercises, misfits, remarks } = heard;
  return [
    hear.found({ bars: bars.length, meter: meter.text, bpm: Math.round(bpm), feel: formatFeel(feel) }),
    ...(groove.length > 0 ? [hear.groove, ...partLines(groove, terminal)] : []),
    ...exercises.flatMap(({ number, parts }) => [hear.exercise({ number }), ...partLines(parts, terminal)]),
    ...remarks.map((fact) => say(fact, terminal.catalogue.language)),
    ...(misfits.length > 0 ? [hear.misfits({ strokes: misfits.length })] : []),
  ];
}

/**
 * Writes down a take, and keeps it as a lesson where asked. A take that no beat can be followed through is told and not
 * kept. @returns the exit status.
 * @throws InputError when the take cannot be read.
 */
export async function hearCommand(request: HearRequest, terminal: Speaker): Promise<number> {
  const { take, out, title = basename(take).replace(/\.[^.]*$/, '') } = request;
  const known = knownOf(request);
  const keys = await readKeysFile(request.keys);
  const { words } = terminal.catalogue;
  terminal.progress(words.listening);
  const { transcript, refusal } = await transcribed(take, known, keys, terminal);
  terminal.progress(null);
  if (!transcript)
    throw new InputError((to) => to.words.hear.nothing({ file: take, why: say(refusal, to.language) }));
  const lesson = lessonOfTranscript(transcript, title);
  if (out !== undefined) await replaceTextFile(out, lesson, terminal);
  if (request.json) terminal.say(JSON.stringify(jsonOf(transcript, lesson), null, 2));
  else for (const line of linesOf(transcript, terminal)) terminal.say(line);
  if (out !== undefined && !request.json)
    terminal.say(words.hear.kept({ exercises: transcript.exercises.length, file: out }));
  return 0;
}
