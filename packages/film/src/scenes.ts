/**
 * The scenes of a film, in order: a title card, the groove built up limb by limb, and each exercise at each tempo.
 *
 * Conventions: frames count from 0; a scene's music begins at a frame, so that what falls on a frame is shown and heard
 * at once; strokes are in seconds from the first click of the count-in; tempi in quarter notes a minute.
 */
import {
  type Bpm,
  defaultForm,
  type Form,
  formIn,
  type Layer,
  type Lesson,
  perform,
  Seconds,
  type Stroke,
  sectionsOf,
} from '@shedbook/core';
import { createProgram, type Landing, landingsOf, type Program } from '@shedbook/playing';

/** Frames a second that a film may have: both divide the samples of a second. */
export const FRAME_RATES = [30, 60] as const;

/** Frames a second. */
export type FrameRate = (typeof FRAME_RATES)[number];

/** What a film is asked to show. */
export interface FilmRequest {
  readonly lesson: Lesson;
  /** Numbers of the exercises, at least one. */
  readonly exercises: readonly number[];
  /** Null for the form that plays where none is named. */
  readonly form: Form | null;
  /** Each exercise is played at each; the start tempo of its section where there is none. */
  readonly tempi: readonly Bpm[];
  readonly framesPerSecond: FrameRate;
  /** Whether the groove is built up before the exercises. */
  readonly buildUp: boolean;
}

interface Span {
  /** First frame of the film that belongs to the scene. */
  readonly startFrame: number;
  readonly frames: number;
}

/** The first card. */
export interface TitleScene extends Span {
  readonly kind: 'title';
}

/** A stage of the groove: what joins, and from which bar of the form (from 1) it plays. */
export interface Stage {
  readonly layer: Layer;
  readonly fromBar: number;
}

/** A scene in which something plays. */
export interface PlayedScene extends Span {
  readonly kind: 'groove' | 'exercise';
  /** The section of the lesson that it is of. */
  readonly lesson: Lesson;
  /** Number of the exercise; null for the groove. */
  readonly exercise: number | null;
  readonly form: Form;
  readonly bpm: Bpm;
  readonly program: Program;
  readonly landings: readonly Landing[];
  /** Frames of the scene before the first click. */
  readonly leadFrames: number;
  readonly strokes: readonly Stroke[];
  readonly durationSeconds: Seconds;
  /** Stages of the groove; none in an exercise. */
  readonly stages: readonly Stage[];
}

/** A scene. */
export type Scene = TitleScene | PlayedScene;

const TITLE_SECONDS = 3;
/** The page stands still before the count-in, and after the last bar until the cymbals have died away. */
const LEAD_SECONDS = 1;
const TAIL_SECONDS = 2;
/** A stage lasts so long at least that its caption can be read. */
const STAGE_SECONDS = 5;

/** A scene that has not been given its first frame. */
type Unplaced<S extends Scene = Scene> = S extends Scene ? Omit<S, 'startFrame'> : never;

function framesFor(playedSeconds: number, rate: FrameRate): number {
  return Math.ceil((LEAD_SECONDS + playedSeconds + TAIL_SECONDS) * rate - 1e-9);
}

function exerciseScene(
  lesson: Lesson,
  exercise: number,
  bpm: Bpm,
  { form: asked, framesPerSecond }: FilmRequest,
): Unplaced<PlayedScene> {
  const form = asked ? formIn(lesson, asked) : defaultForm(lesson);
  const layers = lesson.layers.length;
  const { strokes, durationSeconds } = perform(lesson, { exercise, form, bpm, layers });
  const program = createProgram(lesson, { exercise, form, bpm, layers });
  return {
    ...{ kind: 'exercise', lesson, exercise, form, bpm, program, strokes, durationSeconds, stages: [] },
    landings: landingsOf(program),
    leadFrames: LEAD_SECONDS * framesPerSecond,
    frames: framesFor(durationSeconds, framesPerSecond),
  };
}

/** How many bars each stage has: whole times through the groove. */
function stageBars({ groove }: Lesson, barSeconds: number): number {
  const around = Math.max(1, ...groove.map(({ pattern }) => pattern.bars.length));
  return around * Math.max(1, Math.ceil(STAGE_SECONDS / (around * barSeconds)));
}

function grooveScene(lesson: Lesson, bpm: Bpm, rate: FrameRate): Unplaced<PlayedScene> | null {
  const joining = lesson.layers.map((layer, index) => ({ layer, layers: index + 1 }));
  const own = joining.filter(({ layer }) => layer.joins.some((join) => join !== 'pattern'));
  if (own.length === 0 || lesson.groove.length === 0) return null;
  const timeFor = (bars: number): Form => ({
    ...{ name: 'time', repeat: 1, countInBars: 1 },
    sections: [{ play: 'time', bars, ending: null }],
  });
  const one = perform(lesson, { exercise: null, form: timeFor(1), bpm });
  const bars = stageBars(lesson, one.durationSeconds - one.countInSeconds);
  const form = timeFor(bars * own.length);
  const strokes = own.flatMap(({ layers }, stage) =>
    perform(lesson, { exercise: null, form, bpm, layers }).strokes.filter(({ written: { bar } }) =>
      bar < 1 ? stage === 0 : Math.floor((bar - 1) / bars) === stage,
    ),
  );
  const program = createProgram(lesson, { exercise: null, form, bpm, layers: lesson.layers.length });
  const { durationSeconds } = perform(lesson, { exercise: null, form, bpm });
  return {
    ...{ kind: 'groove', lesson, exercise: null, form, bpm, program, strokes, durationSeconds },
    stages: own.map(({ layer }, stage) => ({ layer, fromBar: stage * bars + 1 })),
    landings: landingsOf(program),
    leadFrames: LEAD_SECONDS * rate,
    frames: framesFor(durationSeconds, rate),
  };
}

function sectionScenes(lesson: Lesson, request: FilmRequest): readonly Unplaced[] {
  const { framesPerSecond, buildUp } = request;
  const tempi = request.tempi.length > 0 ? request.tempi : [lesson.tempo.startBpm];
  const own = request.exercises.filter((number) => lesson.exercises.some((each) => each.number === number));
  if (own.length === 0) return [];
  const groove = buildUp ? grooveScene(lesson, tempi[0] as Bpm, framesPerSecond) : null;
  const exercises = own.flatMap((number) => tempi.map((bpm) => exerciseScene(lesson, number, bpm, request)));
  return groove ? [groove, ...exercises] : exercises;
}

/**
 * The scenes of a film, each beginning where the one before ends. What the lesson does not have is passed over.
 */
export function planScenes(request: FilmRequest): readonly Scene[] {
  const title: Unplaced = { kind: 'title', frames: TITLE_SECONDS * request.framesPerSecond };
  const played = sectionsOf(request.lesson).flatMap((section) => sectionScenes(section, request));
  let startFrame = 0;
  return [title, ...played].map((scene): Scene => {
    const placed = { ...scene, startFrame };
    startFrame += scene.frames;
    return placed;
  });
}

/** The frame after the last. */
export function frameCount(scenes: readonly Scene[]): number {
  const last = scenes.at(-1);
  return last ? last.startFrame + last.frames : 0;
}

/** Where a played scene is after so many seconds from its first click: whole notes, as in its program. */
export function placeAfter({ program, bpm }: PlayedScene, seconds: number): number {
  return program.start + (seconds * bpm) / 240;
}

/** When a place of a played scene is heard: seconds from its first click. */
export function secondsAt({ program, bpm }: PlayedScene, place: number): Seconds {
  return Seconds(((place - program.start) * 240) / bpm);
}
