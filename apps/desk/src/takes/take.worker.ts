/** Hears a student's recording beside the page, as `shedbook listen` does. */
import {
  Bpm,
  defaultForm,
  formNamed,
  formsShown,
  Hertz,
  type Lesson,
  ontoPad,
  padVoice,
  parseLesson,
  playedOn,
  sectionOf,
  turnedForm,
} from '@shedbook/core';
import { readMidi } from '@shedbook/exchange';
import { type Judgement, judge, otherForm, whichExercise } from '@shedbook/judge';
import {
  type Asked,
  type Listened,
  listenToNotes,
  PadListener,
  strokesSent,
  TakeListener,
} from '@shedbook/listen';
import type { Played } from '../dictation/messages.ts';
import type { HeardTake, HearOrder, HearReport, NotHeard } from './take-messages.ts';

/** How much is heard before it is told how far it is, in seconds of the recording. */
const TOLD_SECONDS = 1;

function tell(report: HearReport): void {
  self.postMessage(report);
}

function lessonOf({ text }: HearOrder): Lesson {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson) throw new RangeError('Internal error: a take of a lesson that cannot be read');
  return lesson;
}

function askedOf({ form, bpm }: HearOrder, lesson: Lesson, exercise: number | null): Asked {
  const section = sectionOf(lesson, exercise);
  const named = form === null ? null : formNamed({ forms: formsShown(section, exercise) }, form);
  const shown = named ?? defaultForm(section);
  const whole = { lesson, exercise, form: shown, ...(bpm === null ? {} : { bpm: Bpm(bpm) }) };
  return onOneSurface(whole) ? ontoPad({ ...whole, form: turnedForm(shown) }) : whole;
}

/** Whether what is asked is clapped, and so heard as on one surface. */
function onOneSurface({ lesson, exercise }: Asked): boolean {
  return playedOn(lesson, exercise, 'kit') === 'pad';
}

/** Hears what was played as what was asked, as often as it is asked. */
type HearAs = (asked: Asked) => Listened;

function hearSound({ samples, sampleRateHz }: Extract<Played, { kind: 'sound' }>, first: Asked): HearAs {
  const rate = Hertz(sampleRateHz);
  const listener = onOneSurface(first) ? new PadListener(rate) : new TakeListener(rate);
  const piece = TOLD_SECONDS * sampleRateHz;
  for (let at = 0; at < samples.length; at += piece) {
    tell({ kind: 'listening', share: at / samples.length });
    listener.push(samples.subarray(at, at + piece));
  }
  tell({ kind: 'listening', share: 1 });
  return (asked) => listener.finish(asked);
}

/** A MIDI file; null where it is none. */
function hearMidi(bytes: Uint8Array, first: Asked): HearAs | null {
  const one = onOneSurface(first) ? padVoice(first.lesson, first.exercise) : null;
  const { notes, durationSeconds, problems } = readMidi(bytes);
  if (problems.some(({ severity }) => severity === 'error')) return null;
  const played = strokesSent(notes, one);
  return (asked) => listenToNotes(played, durationSeconds, asked);
}

/** The exercises that are played on a drum set, and not clapped. */
function onKit(lesson: Lesson): Lesson['exercises'] {
  return lesson.exercises.filter(({ number }) => playedOn(lesson, number, 'kit') === 'kit');
}

/** What was played, where nobody named the exercise, or what was named. */
function heardFirst(order: HearOrder, lesson: Lesson, as: HearAs) {
  const asFor = (exercise: number | null) => as(askedOf(order, lesson, exercise));
  const { exercise } = order;
  return exercise === null
    ? whichExercise(lesson, onKit(lesson), asFor)
    : { exercise, heard: asFor(exercise), told: null };
}

function hear(order: HearOrder): HeardTake | NotHeard {
  const { played, level } = order;
  if (played.kind === 'notes') throw new RangeError('Internal error: a take is a file');
  const lesson = lessonOf(order);
  const first = askedOf(order, lesson, order.exercise ?? onKit(lesson)[0]?.number ?? null);
  const as = played.kind === 'sound' ? hearSound(played, first) : hearMidi(played.bytes, first);
  if (!as) return 'failed';
  const found = heardFirst(order, lesson, as);
  if (!found) return 'untold';
  const { exercise, heard: listened, told } = found;
  const asked = askedOf(order, lesson, exercise);
  const judgement = judge(asked, listened, level);
  const forms = formsShown(sectionOf(lesson, exercise), exercise);
  const of = { exercise, told };
  const other = onOneSurface(asked)
    ? null
    : otherForm(asked, { ...judgement, level }, forms, (form) => as({ ...asked, form }));
  if (other && order.form === null)
    return { ...of, ...heardIn(other.form.name, other.heard, other.judgement) };
  return { ...of, ...heardIn(asked.form.name, listened, judgement), cleanIn: other?.form.name ?? null };
}

function heardIn(form: string, { report, refusal }: Listened, judgement: Judgement) {
  return { report, refusal: report ? null : refusal, judgement, form, cleanIn: null };
}

self.onmessage = ({ data }: MessageEvent<HearOrder>) => {
  tell({ kind: 'heard', heard: hear(data) });
  self.close();
};
