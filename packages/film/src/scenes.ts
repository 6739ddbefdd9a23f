/** The scenes of a film, in order: a title card, the groove built up limb by limb, and each exercise at each tempo. */
import {
  type Bpm,
  type Form,
  formIn,
  formShown,
  type Lesson,
  type Performance,
  perform,
  sectionsOf,
} from '@shedbook/core';
import { createProgram, evenClock, landingsOf, type Program } from '@shedbook/playing';
import { addClicks, type ClickOptions, type SpokenLanguage } from '@shedbook/sound';
import type { OverPerformances } from './recorded.ts';
import { recordedScene } from './recorded-scene.ts';
import type { FrameRate, PlayedScene, Scene, Unplaced } from './scene.ts';

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
  /** Performances to follow instead of the grid, for the exercises that there are some of. */
  readonly over?: OverPerformances | undefined;
  /** The click that plays along where no performance is followed; none where left out. */
  readonly click?: Omit<ClickOptions, 'meter'> | null;
  /** The language that is counted aloud in, on every click, the count-in with them; nothing is said where left out. */
  readonly countAloud?: SpokenLanguage | null;
}

const TITLE_SECONDS = 3;
/** The page stands still before the count-in, and after the last bar until the cymbals have died away. */
const LEAD_SECONDS = 1;
const TAIL_SECONDS = 2;
/** A stage lasts so long at least that its caption can be read. */
const STAGE_SECONDS = 5;

/** A performance with the click that the film has. */
function clicked(performance: Performance, { meter }: Lesson, { click }: FilmRequest): Performance {
  return click ? addClicks(performance, { meter, ...click }) : performance;
}

/** What follows the grid knows of its program. */
function onGrid(program: Program, bpm: Bpm) {
  const formBars = program.bars.map(({ bar }) => bar);
  const clock = evenClock(program.start, bpm);
  return { program, asked: program, formBars, clock, landings: landingsOf(program), shown: null };
}

function framesFor(playedSeconds: number, rate: FrameRate): number {
  return Math.ceil((LEAD_SECONDS + playedSeconds + TAIL_SECONDS) * rate - 1e-9);
}

function exerciseScene(
  lesson: Lesson,
  exercise: number,
  bpm: Bpm,
  request: FilmRequest,
): Unplaced<PlayedScene> {
  const { form: asked, framesPerSecond } = request;
  const form = asked ? formIn(lesson, asked) : formShown(lesson, exercise, null);
  const layers = lesson.layers.length;
  const played = perform(lesson, { exercise, form, bpm, layers });
  const { strokes, durationSeconds } = clicked(played, lesson, request);
  const program = createProgram(lesson, { exercise, form, bpm, layers });
  return {
    ...{ kind: 'exercise', lesson, exercise, form, bpm, strokes, durationSeconds, stages: [] },
    ...onGrid(program, bpm),
    leadFrames: LEAD_SECONDS * framesPerSecond,
    frames: framesFor(durationSeconds, framesPerSecond),
  };
}

/** How many bars each stage has: whole times through the groove. */
function stageBars({ groove }: Lesson, barSeconds: number): number {
  const around = Math.max(1, ...groove.map(({ pattern }) => pattern.bars.length));
  return around * Math.max(1, Math.ceil(STAGE_SECONDS / (around * barSeconds)));
}

function grooveScene(lesson: Lesson, bpm: Bpm, request: FilmRequest): Unplaced<PlayedScene> | null {
  const rate = request.framesPerSecond;
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
  const joined = own.flatMap(({ layers }, stage) =>
    perform(lesson, { exercise: null, form, bpm, layers }).strokes.filter(({ written: { bar } }) =>
      bar < 1 ? stage === 0 : Math.floor((bar - 1) / bars) === stage,
    ),
  );
  const program = createProgram(lesson, { exercise: null, form, bpm, layers: lesson.layers.length });
  const whole = perform(lesson, { exercise: null, form, bpm });
  const { strokes, durationSeconds } = clicked({ ...whole, strokes: joined }, lesson, request);
  return {
    ...{ kind: 'groove', lesson, exercise: null, form, bpm, strokes, durationSeconds },
    ...onGrid(program, bpm),
    stages: own.map(({ layer }, stage) => ({ layer, fromBar: stage * bars + 1 })),
    leadFrames: LEAD_SECONDS * rate,
    frames: framesFor(durationSeconds, rate),
  };
}

function sectionScenes(lesson: Lesson, request: FilmRequest): readonly Unplaced[] {
  const { framesPerSecond, buildUp, over } = request;
  const tempi = request.tempi.length > 0 ? request.tempi : [lesson.tempo.startBpm];
  const own = request.exercises.filter((number) => lesson.exercises.some((each) => each.number === number));
  if (own.length === 0) return [];
  const groove = buildUp ? grooveScene(lesson, tempi[0] as Bpm, request) : null;
  const exercises = own.flatMap((number) => {
    const recorded = over?.recorded.find((each) => each.exercise === number);
    if (!over || !recorded) return tempi.map((bpm) => exerciseScene(lesson, number, bpm, request));
    return over.speeds.map((speed) => recordedScene(lesson, recorded, { speed, framesPerSecond }));
  });
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
