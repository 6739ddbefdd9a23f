/** Hears performances of exercises, so that a film can follow them: of several takes of one, the one to show. */
import {
  Bpm,
  defaultForm,
  type Form,
  formIn,
  formsShown,
  Hertz,
  type Lesson,
  sectionOf,
} from '@shedbook/core';
import { LevelMeter, type Recorded, soundingOf } from '@shedbook/film';
import { judge, otherForm, type Verdict } from '@shedbook/judge';
import { TakeListener } from '@shedbook/listen';
import { say } from '@shedbook/words';
import { InputError, type SayIn } from '../input-error.ts';
import { pictureSize, type Recordings, readMono } from './recordings.ts';

/** A recording of an exercise. */
export interface PerformanceFile {
  readonly exercise: number;
  readonly path: string;
}

/** What recordings are heard with. */
export interface HearOrder {
  readonly lesson: Lesson;
  /** Null for the form that plays where none is named. */
  readonly form: Form | null;
  /** About how fast, in quarter notes a minute; the start tempo where left out. */
  readonly bpm?: Bpm | undefined;
  readonly files: readonly PerformanceFile[];
  readonly signal: AbortSignal;
  /** Told before each of the files, from 1. */
  readonly tell: (file: number) => void;
}

/** A take that was not chosen, and why the other one was. */
export interface TakeHeard {
  readonly exercise: number;
  readonly path: string;
  /** Number of faults that a teacher would count. */
  readonly faults: number;
  readonly isShown: boolean;
}

/** Performances to show, their files, and what was heard of each file. */
export interface HeardPerformances {
  readonly recorded: readonly Recorded[];
  readonly recordings: Recordings;
  readonly takes: readonly TakeHeard[];
}

/** The exercise is not what is played. */
export class NotPlayedError extends InputError {
  /** The exercise of the lesson that is, where it is one. */
  readonly otherExercise: number | null;

  /** @param otherExercise the exercise of the lesson that is played instead, or null */
  constructor(otherExercise: number | null, say: SayIn) {
    super(say);
    this.otherExercise = otherExercise;
  }
}

const RATE_HZ = Hertz(44_100);
/** Whoever demonstrates is judged as closely as can be. */
const LEVEL = 'advanced';

/** How many faults a teacher would count: strokes that went wrong, and what is wrong as a whole. */
function faultsOf({ about }: Verdict): number {
  return about.reduce((sum, { what, times = 1 }) => sum + (what === 'offset' ? 0 : times), 0);
}

interface Heard {
  readonly file: PerformanceFile;
  readonly recorded: Recorded;
  readonly faults: number;
}

async function hear(file: PerformanceFile, { lesson, form, bpm, signal }: HearOrder): Promise<Heard> {
  const { exercise, path } = file;
  const listener = new TakeListener(RATE_HZ);
  const meter = new LevelMeter(RATE_HZ);
  for await (const block of readMono(path, RATE_HZ, signal)) {
    listener.push(block);
    meter.push(block);
  }
  const section = sectionOf(lesson, exercise);
  const asked = {
    ...{ lesson, exercise, form: form ? formIn(section, form) : defaultForm(section) },
    ...(bpm === undefined ? {} : { bpm: Bpm(bpm) }),
  };
  const listened = listener.finish(asked);
  const { report, refusal } = listened;
  if (!report) {
    throw new NotPlayedError(null, ({ words, language }) =>
      words.film.notFollowed({ file: path, n: exercise, why: say(refusal, language) }),
    );
  }
  const judged = judge(asked, listened, LEVEL);
  // A form that nobody named is whichever is played.
  const forms = form ? [] : formsShown(section, exercise);
  const played = otherForm(asked, { ...judged, level: LEVEL }, forms, (each) =>
    listener.finish({ ...asked, form: each }),
  );
  const { verdict } = played?.judgement ?? judged;
  const other = verdict.about.find(({ what }) => what === 'other-exercise')?.exercise;
  if (other !== undefined)
    throw new NotPlayedError(other, ({ words }) =>
      words.film.otherExercise({ file: path, n: exercise, other }),
    );
  const heard = { form: played?.form ?? form, report: played?.heard.report ?? report };
  const sounding = soundingOf(meter, heard.report);
  const recorded = { exercise, ...heard, sounding, picture: await pictureSize(path) };
  return { file, recorded, faults: faultsOf(verdict) };
}

/**
 * Hears all files; of several takes of an exercise the one with the fewest faults is shown.
 * @throws InputError where one cannot be read or followed, or is of another exercise, or where there is no FFmpeg
 */
export async function hearPerformances(order: HearOrder): Promise<HeardPerformances> {
  const heard: Heard[] = [];
  for (const [index, file] of order.files.entries()) {
    order.tell(index + 1);
    heard.push(await hear(file, order));
  }
  const exercises = [...new Set(heard.map(({ file }) => file.exercise))];
  const best = exercises.map((exercise) => {
    const takes = heard.filter(({ file }) => file.exercise === exercise);
    return takes.reduce((one, other) => (other.faults < one.faults ? other : one));
  });
  return {
    recorded: best.map(({ recorded }) => recorded),
    recordings: new Map(best.map(({ recorded, file }) => [recorded, file.path])),
    takes: heard.map((each) => ({ ...each.file, faults: each.faults, isShown: best.includes(each) })),
  };
}
