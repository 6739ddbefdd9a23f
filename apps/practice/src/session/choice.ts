/**
 * What a student chooses about playing, and what it comes to.
 *
 * Conventions: tempi in quarter notes a minute; layers from 1; beats from 1.
 */
import {
  Bpm,
  bringWithin,
  defaultForm,
  EXAMPLE_FORM,
  exampleForm,
  type Form,
  formShown,
  formsShown,
  type Lesson,
  LIMBS,
  type Limb,
  leavesBars,
  PLAYED_TEMPI,
  padLimbs,
  playedOn,
  type SetUp,
  type Subdivision,
  type Surface,
  sectionOf,
  sectionsOf,
  type Voice,
} from '@shedbook/core';
import type { ClickGap } from '@shedbook/sound';
import type { LiveSettings } from '@shedbook/stand';

/** Where the click falls: every beat, the second of every two, the first of a bar, nowhere. */
export type ClickChoice = 'all' | 'backbeat' | 'bar' | 'off';

/** Everything that can be chosen. */
export interface PracticeChoice {
  readonly bpm: number;
  /** Name of a form of the lesson, {@link BUILD_UP} or {@link TRADE}. */
  readonly form: string;
  /** Layers of the groove that play. */
  readonly layers: number;
  readonly click: ClickChoice;
  readonly gap: ClickGap | null;
  /** Whether it is counted aloud over the click. */
  readonly isSpoken: boolean;
  /** Slots of a beat that are ticked quietly; 1 is none. */
  readonly guide: Subdivision;
  /** Limbs that the student plays, silent in the recording. */
  readonly mine: readonly Limb[];
  /** Whether loops are counted towards another tempo. */
  readonly ladder: boolean;
  /** The exercise alone, or every limb. */
  readonly staff: 'own' | 'full';
  readonly setUp: SetUp;
  /** What the student plays on. */
  readonly surface: Surface;
  /** What sounds while one plays freely. */
  readonly free: FreeWith;
}

/** What free play goes along with. */
export type FreeWith = 'groove' | 'click';

/** The form in which the groove joins layer by layer. */
export const BUILD_UP = 'layer by layer';

/** The form in which recording and student take turns, where the lesson has none of its own. */
export const TRADE = 'trade';

/** The form of playing whatever one likes. */
export const FREE = 'free';

/** Bars of one turn. */
export const TRADE_BARS = 4;

/** A tempo brought into the range, to a whole number. */
export function withinRange(bpm: number): Bpm {
  return bringWithin(PLAYED_TEMPI, Math.round(bpm));
}

/** Layers of the section that has most: as many are all of them in every section. */
export function mostLayers(lesson: Lesson): number {
  return Math.max(...sectionsOf(lesson).map(({ layers }) => layers.length));
}

/** What is chosen before anything is. */
export function firstChoice(lesson: Lesson): PracticeChoice {
  return {
    bpm: lesson.tempo.startBpm,
    form: defaultForm(lesson).name,
    layers: mostLayers(lesson),
    click: 'off',
    gap: null,
    isSpoken: false,
    guide: 1,
    mine: [],
    ladder: true,
    staff: lesson.sheet.staff === 'full' ? 'full' : 'own',
    setUp: lesson.setUp,
    surface: 'kit',
    free: 'groove',
  };
}

function tradeForm(lesson: Lesson): Form {
  const section = (play: 'pattern' | 'rest') => ({ play, bars: TRADE_BARS, ending: null });
  const { countInBars } = defaultForm(lesson);
  return { name: TRADE, sections: [section('pattern'), section('rest')], repeat: 1, countInBars };
}

/** Time round and round, with nothing that is asked for. */
function freeForm(lesson: Lesson): Form {
  const { countInBars } = defaultForm(lesson);
  return { name: FREE, sections: [{ play: 'time', bars: TRADE_BARS, ending: null }], repeat: 1, countInBars };
}

/** What is chosen, while one plays freely: all of the groove or the click alone, and nothing is counted. */
export function freeChoice(lesson: Lesson, choice: PracticeChoice): PracticeChoice {
  const isClick = choice.free === 'click';
  return {
    ...{ ...choice, form: FREE, layers: lesson.layers.length, ladder: false },
    click: isClick && choice.click === 'off' ? 'all' : choice.click,
    mine: isClick ? LIMBS : choice.mine,
  };
}

/**
 * What is chosen, while one plays an exercise on a pad or claps it: the page leaves its limbs to the student, all the time
 * or in the bars that the form leaves.
 */
export function padChoice(lesson: Lesson, exercise: number | null, choice: PracticeChoice): PracticeChoice {
  const surface = playedOn(lesson, exercise, choice.surface);
  if (surface !== 'pad' || exercise === null) return choice;
  const form = formOf(sectionOf(lesson, exercise), choice.form, exercise);
  return { ...choice, surface, mine: leavesBars(form) ? [] : padLimbs(lesson, exercise) };
}

/** What is chosen while the example of an exercise is heard: all of it, and nothing is counted. */
export function exampleChoice(
  lesson: Lesson,
  exercise: number | null,
  choice: PracticeChoice,
): PracticeChoice {
  if (choice.form !== EXAMPLE_FORM) return choice;
  if (!exampleForm(lesson, exercise)) return { ...choice, form: defaultForm(lesson).name };
  return { ...choice, layers: lesson.layers.length, mine: [], ladder: false };
}

/** The form with a name, of an exercise or of the groove alone; the loop where there is none. */
export function formOf(lesson: Lesson, name: string, exercise: number | null = null): Form {
  if (name === TRADE) return tradeForm(lesson);
  if (name === FREE) return freeForm(lesson);
  return formShown(lesson, exercise, name);
}

/** Names of the forms that an exercise can be practised or heard in: the lesson's own, and the two that every lesson has. */
export function formNames(lesson: Lesson, exercise: number | null): readonly string[] {
  const own = formsShown(lesson, exercise).map((form) => form.name);
  const trade = lesson.forms.some(leavesBars) ? [] : [TRADE];
  return [...own, ...(lesson.layers.length > 1 ? [BUILD_UP] : []), ...trade];
}

/** The beats that click. */
export function clickBeats(lesson: Lesson, click: ClickChoice): readonly number[] {
  const all = lesson.meter.beats.map((_, index) => index + 1);
  if (click === 'backbeat') return all.filter((beat) => beat % 2 === 0);
  if (click === 'bar') return [1];
  return click === 'all' ? all : [];
}

/** Voices of the lesson and its exercises that a limb plays. */
export function voicesOfLimb(lesson: Lesson, limb: Limb): readonly Voice[] {
  return (Object.keys(lesson.limbs) as Voice[]).filter((voice) => lesson.limbs[voice] === limb);
}

/** Whether anything clicks: what is chosen, or what the form asks for. */
export function isClicking({ click, guide }: Pick<PracticeChoice, 'click' | 'guide'>, form: Form): boolean {
  return click !== 'off' || guide > 1 || form.sections.some((section) => (section.click ?? []).length > 0);
}

/** The settings that can change while it plays. */
export function settingsOf(lesson: Lesson, choice: PracticeChoice): LiveSettings {
  const { bpm, click, gap, guide, mine } = choice;
  return {
    bpm: Bpm(bpm),
    click: click !== 'off' || guide > 1,
    ...(gap ? { gap } : {}),
    mute: mine.flatMap((limb) => voicesOfLimb(lesson, limb)),
    trimDb: {},
  };
}

/** Whether the whole groove shows more than an exercise does alone: what is clapped without a groove has nothing under it. */
export function hasMoreLimbs(lesson: Lesson, exercise: number | null): boolean {
  const section = sectionOf(lesson, exercise);
  const own = section.exercises.find(({ number }) => number === exercise)?.parts ?? [];
  return section.groove.some(({ voice }) => !own.some((part) => part.voice === voice));
}
