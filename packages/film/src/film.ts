/** A film: its scenes with their pages, and what each frame of it shows. */
import { howEach, isSticked, sectionOf } from '@shedbook/core';
import { type Block, HOW_MM, howRows } from '@shedbook/engrave';
import { ballOn, beatAt, flightAt, type Landing, type PictureSizes, shownAt } from '@shedbook/playing';
import { type Layout, layOutPage, type PicturePlace } from './layout.ts';
import { BALL_MM, FULL_SIZE, SCHEMES, type SchemeName, SHAPES, type ShapeName } from './look.data.ts';
import { type DrawingTools, engraveScene, layOutScene, type PlacedBar, type ScenePage } from './pages.ts';
import type { PlayedScene, Scene, TitleScene } from './scene.ts';
import { type FilmRequest, frameCount, planScenes } from './scenes.ts';

/** What a film is asked to look like. */
export interface FilmLook {
  readonly shape: ShapeName;
  readonly scheme: SchemeName;
  /** Pixels of a millimetre of the page, {@link FULL_SIZE} where left out. */
  readonly pixelsPerMm?: number;
  /** Where the picture of a performance stands; null where it is not shown; what suits the shape where left out. */
  readonly picture?: PicturePlace | null;
}

/** A played scene and its pages: of a groove, those of each stage. */
export interface StagedScene extends PlayedScene {
  readonly stagePages: readonly (readonly ScenePage[])[];
  readonly sizes: PictureSizes;
  readonly layout: Layout;
}

/** A film. */
export interface Film {
  readonly request: FilmRequest;
  readonly look: FilmLook & { readonly pixelsPerMm: number };
  readonly scenes: readonly (TitleScene | StagedScene)[];
  readonly frames: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly tools: DrawingTools;
}

/** Beside a page that is wide, over one that is tall. */
function suitablePlace(shape: ShapeName): PicturePlace {
  return shape === 'landscape' ? 'beside' : 'above';
}

/** How large words for how the limbs play stand beside the other small ones. */
const HOW_SIZE = 0.85;

/** How the limbs play in a scene, up to a stage of its groove; as large as it is drawn. */
export function howIn(
  { lesson, exercise: number, stages }: PlayedScene,
  { left, right, small }: Pick<Layout, 'left' | 'right' | 'small'>,
  tools: DrawingTools,
  stage = stages.length - 1,
): { readonly rows: Block; readonly size: number } {
  const joined = new Set(stages.slice(0, stage + 1).flatMap(({ layer }) => layer.joins));
  const exercise = lesson.exercises.find((each) => each.number === number) ?? null;
  const said = howEach(lesson, exercise).filter(([voice]) => exercise !== null || joined.has(voice));
  const size = (HOW_SIZE * small) / HOW_MM;
  return { rows: howRows(tools, said, (right - left) / size), size };
}

function layoutOf(scene: PlayedScene, look: FilmLook, tools: DrawingTools): Layout {
  const { shape, picture = suitablePlace(shape) } = look;
  const size = scene.shown?.recorded.picture;
  const placed = size && picture !== null ? { place: picture, ratio: size.widthPx / size.heightPx } : null;
  return layOutPage(shape, placed, (page) => {
    const how = howIn(scene, page, tools);
    return how.rows.heightMm * how.size;
  });
}

function staged(scene: Scene, tools: DrawingTools, look: FilmLook): TitleScene | StagedScene {
  if (scene.kind === 'title') return scene;
  const stages = scene.kind === 'groove' ? scene.stages.map((_, stage) => stage) : [-1];
  const pictures = stages.map((stage) => engraveScene(scene, tools, stage));
  const whole = pictures.at(-1) ?? { exercise: [], groove: [] };
  const hasHands = scene.lesson.exercises.some((each) => each.number === scene.exercise && isSticked(each));
  const hasTime = scene.form.sections.some((section) => section.play === 'time');
  const shown = (groove: typeof whole.groove) => (hasTime || whole.exercise.length === 0 ? groove : []);
  const layout = layoutOf(scene, look, tools);
  return {
    ...scene,
    layout,
    stagePages: pictures.map(({ exercise, groove }) =>
      layOutScene({ exercise, groove: shown(groove) }, { whole, hasHands }, layout),
    ),
    sizes: { exercise: whole.exercise.length, groove: shown(whole.groove).length },
  };
}

/** Plans a film and engraves what it shows. @throws RangeError where the lesson has none of the exercises */
export function createFilm(request: FilmRequest, look: FilmLook, tools: DrawingTools): Film {
  const known = sectionOf(request.lesson, request.exercises[0] ?? null);
  if (!known.exercises.some(({ number }) => number === request.exercises[0]))
    throw new RangeError(`At exercises: found ${request.exercises.join(', ')}, expected some of the lesson`);
  const planned = planScenes(request);
  const { pixelsPerMm = FULL_SIZE } = look;
  const { widthMm, heightMm } = SHAPES[look.shape];
  return {
    ...{ request, tools, look: { ...look, pixelsPerMm } },
    scenes: planned.map((scene) => staged(scene, tools, look)),
    frames: frameCount(planned),
    widthPx: widthMm * pixelsPerMm,
    heightPx: heightMm * pixelsPerMm,
  };
}

/** The colours of a film. */
export function coloursOf({ look }: Film) {
  return SCHEMES[look.scheme];
}

/** What is lit over a page: the counts of a beat of one of its bars. */
export interface Lit {
  readonly bar: PlacedBar;
  /** Beat of the bar, from 1. */
  readonly beat: number;
}

/** What a frame shows. */
export interface Frame {
  readonly scene: TitleScene | StagedScene;
  /** Stage of the groove (from 0); 0 in an exercise. */
  readonly stage: number;
  /** Page of the stage, or null for the title. */
  readonly page: ScenePage | null;
  /** Bar of the form, from 1; 0 and less in the count-in; null where nothing has begun. */
  readonly formBar: number | null;
  readonly lit: Lit | null;
  /** Middle of the ball and its radius, in millimetres of the page; null while there is none. */
  readonly ball: { readonly xMm: number; readonly yMm: number; readonly radiusMm: number } | null;
}

function stageAt({ stages }: StagedScene, bar: number): number {
  return Math.max(
    0,
    stages.findLastIndex(({ fromBar }) => fromBar <= bar),
  );
}

function firstFrame(scene: StagedScene): Frame {
  const page = scene.stagePages[0]?.[0] ?? null;
  return { scene, stage: 0, page, formBar: null, lit: null, ball: null };
}

/** Which picture a landing is shown on: that of the bar of the form that is played. */
function shownIn({ asked, formBars, sizes }: StagedScene, landing: Landing) {
  return shownAt(asked, { ...landing, bar: formBars[Math.max(1, landing.bar) - 1] ?? 1 }, sizes);
}

/** What a played scene shows so many seconds from the end of its lead. */
function playedFrame(scene: StagedScene, seconds: number): Frame {
  const { program, landings } = scene;
  const place = scene.clock.placeAt(seconds);
  const flight = flightAt(landings, place, program.end);
  const where = flight && shownIn(scene, flight.from);
  if (!flight || !where) return firstFrame(scene);
  const formBar = beatAt(program, place)?.bar ?? 1;
  const stage = stageAt(scene, formBar);
  const isSame = ({ shown }: PlacedBar) => shown.on === where.on && shown.index === where.index;
  const page = scene.stagePages[stage]?.find(({ bars }) => bars.some(isSame)) ?? null;
  const bar = page?.bars.find(isSame);
  const isOver = place >= program.end - 1e-9;
  if (!bar || isOver) return { scene, stage, page, formBar, lit: null, ball: null };
  const { acrossMm, overMm } = ballOn({ widthMm: bar.bar.tile.widthMm, slots: bar.bar.slots }, flight);
  const ball = {
    xMm: bar.xMm + bar.size * acrossMm,
    yMm: bar.floorMm - bar.size * overMm,
    radiusMm: bar.size * BALL_MM.radius,
  };
  return { scene, stage, page, formBar, lit: { bar, beat: flight.from.beat + 1 }, ball };
}

/** What a frame (from 0) of a film shows: the moment at which it appears. */
export function frameAt({ scenes, request }: Film, frame: number): Frame {
  const scene = scenes.findLast(({ startFrame }) => startFrame <= frame) ?? scenes[0];
  if (!scene) throw new RangeError('Internal error: a film without scenes');
  if (scene.kind === 'title') return { scene, stage: 0, page: null, formBar: null, lit: null, ball: null };
  const after = frame - scene.startFrame - scene.leadFrames;
  return after < 0 ? firstFrame(scene) : playedFrame(scene, after / request.framesPerSecond);
}
