/** `shedbook listen`: what was really played in a recording of an exercise. */
import { writeFile } from 'node:fs/promises';
import {
  Bpm,
  defaultForm,
  type Exercise,
  exerciseLabel,
  formsShown,
  type Lesson,
  Milliseconds,
  millisecondsToSeconds,
  ontoPad,
  playedOn,
  SURFACES,
  type Surface,
  sectionOf,
  turnedForm,
} from '@shedbook/core';
import { InputError, reasonOf } from '@shedbook/host';
import {
  type AsExercise,
  asJudged,
  type Judgement,
  judge,
  LEVELS,
  otherForm,
  whichExercise,
} from '@shedbook/judge';
import type { Asked, Listened } from '@shedbook/listen';
import {
  type CliCatalogue,
  pictureText,
  REPORTS,
  say,
  teacherSentences,
  withSentences,
} from '@shedbook/words';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import { type HeardTake, hearTake } from '../listen/hear.ts';
import { readLineCheck } from '../listen/line-check-file.ts';
import { loudspeakerHint } from '../listen/loudspeaker-hint.ts';
import { readKeysFile } from '../listen/midi-take.ts';
import { reportLines } from '../listen/report-text.ts';
import { readChoice, readVoices, requireForm } from '../options.ts';
import type { Speaker } from '../terminal.ts';

/** What the command line asks for. */
export interface ListenRequest {
  readonly take: string;
  readonly lesson: string;
  /** Whichever was played when left out. */
  readonly exercise?: number;
  readonly form?: string;
  /** Quarter notes a minute; the lesson's own when left out. */
  readonly tempo?: number;
  /** Where the recording began with the click: how late the click sounds in it, in ms. */
  readonly latency?: number;
  /** One of LEVELS; intermediate when left out. */
  readonly level?: string;
  /** Voices joined by commas; all that are written when left out. */
  readonly plays?: string;
  /** One of SURFACES; a drum set when left out. */
  readonly on?: string;
  /** A recording of what a loudspeaker played during the take. */
  readonly playing?: string;
  /** A file with the keys of the electronic kit that the take is from. */
  readonly keys?: string;
  /** A file with what a line check told of the kit. */
  readonly lineCheck?: string;
  /** Where to write the picture. */
  readonly picture?: string;
  readonly json?: boolean;
}

function titleOf(lesson: Lesson, exercise: Exercise | null, exerciseWord: string): string {
  if (!exercise) return lesson.title;
  return `${lesson.title} · ${exercise.name ?? `${exerciseWord} ${exerciseLabel(exercise.number)}`}`;
}

/** What is printed of a take of which there is no report: why, and the verdict. */
function unreported(
  listened: Listened & { readonly report: null },
  judgement: Judgement,
  { language }: CliCatalogue,
) {
  const reason = say(listened.refusal, language);
  return {
    lines: [...teacherSentences(judgement, language), reason],
    json: {
      report: null,
      notHeard: [say(listened.refusal, REPORTS.en.language)],
      verdict: judgement.verdict,
    },
  };
}

/** The picture, as a file. @throws InputError when it cannot be written */
async function draw(picture: string, svg: string): Promise<void> {
  await writeFile(picture, svg).catch((error: unknown) => {
    throw new InputError((to) => {
      const { unreadable, expected } = to.words;
      return unreadable({
        file: `--picture: ${picture}`,
        why: reasonOf(error, to),
        expected: expected.picture,
      });
    });
  });
}

/** What was asked, for an exercise. @throws InputError where it has no such form, or no such voices are known */
function taskOf(request: ListenRequest, lesson: Lesson, onPad: boolean): (exercise: number | null) => Asked {
  const tempo = request.tempo === undefined ? {} : { bpm: Bpm(request.tempo) };
  const plays = request.plays === undefined ? {} : { plays: readVoices('plays', request.plays) };
  return (exercise) => {
    const section = sectionOf(lesson, exercise);
    const shown = { ...section, forms: formsShown(section, exercise) };
    const form = request.form === undefined ? defaultForm(section) : requireForm(shown, request.form);
    // What is left to the student is what the student plays there.
    const whole = { lesson, exercise, form: onPad ? turnedForm(form) : form, ...tempo };
    // On a pad there is one voice, whoever plays what on a drum set.
    return onPad ? ontoPad(whole) : { ...whole, ...plays };
  };
}

/** The exercises that may have been played: those for the surface, and with the form where one was named. */
function candidatesOf({ form }: ListenRequest, lesson: Lesson, surface: Surface): readonly Exercise[] {
  return lesson.exercises.filter(({ number }) => {
    const forms = formsShown(sectionOf(lesson, number), number);
    const hasForm = form === undefined || forms.some(({ name }) => name === form);
    return hasForm && playedOn(lesson, number, surface) === surface;
  });
}

/** What was played where nobody named the exercise. @throws InputError where it cannot be told */
function played(
  lesson: Lesson,
  exercises: readonly Exercise[],
  { listened, as }: HeardTake,
  askedFor: (exercise: number | null) => Asked,
): AsExercise<Listened> {
  // the take is heard as the first of them already
  const first = exercises[0]?.number ?? null;
  const hearAs = as && ((each: number | null) => (each === first ? listened : as(askedFor(each))));
  const found = hearAs && whichExercise(lesson, exercises, hearAs);
  if (found) return found;
  throw new InputError(({ words }) => words.exerciseUntold({ most: exercises.length }));
}

/**
 * Listens to a recording and prints its report with the verdict. A take of another exercise, or in which nobody plays,
 * is a verdict and no failure. @returns the exit status.
 * @throws InputError when the recording cannot be read.
 */
export async function listenCommand(request: ListenRequest, terminal: Speaker): Promise<number> {
  const { take } = request;
  const level = readChoice('level', request.level ?? 'intermediate', LEVELS);
  const { tag: language, words } = terminal.catalogue;
  const lesson = requireLesson(await readLessonFile(request.lesson), terminal);
  const surface = readChoice('on', request.on ?? 'kit', SURFACES);
  const candidates = candidatesOf(request, lesson, surface);
  if (request.exercise !== undefined) requireExercise(lesson, request.exercise, '--exercise');
  const first = request.exercise ?? candidates[0]?.number ?? null;
  const onPad = playedOn(lesson, first, surface) === 'pad';
  const askedFor = taskOf(request, lesson, onPad);
  const latencySeconds =
    request.latency === undefined ? null : millisecondsToSeconds(Milliseconds(request.latency));
  terminal.progress(words.listening);
  const hearing = await hearTake(take, askedFor(first), {
    terminal,
    latencySeconds,
    onPad,
    playing: request.playing ?? null,
    keys: await readKeysFile(request.keys),
    kit: await readLineCheck(request.lineCheck, terminal),
  });
  const found = request.exercise === undefined ? played(lesson, candidates, hearing, askedFor) : null;
  const { exercise, heard: heardFirst } = found ?? { exercise: first, heard: hearing.listened };
  terminal.progress(null);
  const asked = askedFor(exercise);
  const { form } = asked;
  const forms = formsShown(sectionOf(lesson, exercise), exercise);
  const asAsked = judge(asked, heardFirst, level);
  const { as } = hearing;
  const other = as && otherForm(asked, { ...asAsked, level }, forms, (each) => as({ ...asked, form: each }));
  // a form that nobody named is whichever was played
  const isNamed = request.form !== undefined;
  const {
    heard: listened,
    judgement,
    form: playedForm,
  } = other && !isNamed ? other : { heard: heardFirst, judgement: asAsked, form };
  if (!listened.report) {
    const { lines, json } = unreported(listened, judgement, terminal.catalogue);
    const more = loudspeakerHint(judgement, request.playing, words);
    for (const line of request.json ? [JSON.stringify(json, null, 2)] : [...lines, ...more])
      terminal.say(line);
    return 0;
  }
  const report = asJudged(listened.report, judgement);
  if (request.picture !== undefined) {
    const drawn = lesson.exercises.find(({ number }) => number === exercise) ?? null;
    const title = titleOf(lesson, drawn, REPORTS[language].words.exercise);
    const { drawReport } = await import('@shedbook/engrave/report');
    await draw(request.picture, drawReport(report, pictureText(report, { title, judgement, language })));
  }
  const { verdict, rounds } = judgement;
  const cleanIn = other && isNamed ? other.form.name : null;
  const json = {
    ...withSentences(report),
    number: exercise,
    form: playedForm.name,
    cleanIn,
    verdict,
    rounds,
  };
  if (request.json) {
    terminal.say(JSON.stringify(json, null, 2));
    return 0;
  }
  if (found) terminal.say(say(found.told, terminal.catalogue.language));
  if (cleanIn !== null)
    terminal.say(say({ fact: 'clean-in-form', form: cleanIn }, terminal.catalogue.language));
  for (const line of reportLines(report, { judgement, form: playedForm, tag: language })) terminal.say(line);
  for (const line of loudspeakerHint(judgement, request.playing, words)) terminal.say(line);
  return 0;
}
