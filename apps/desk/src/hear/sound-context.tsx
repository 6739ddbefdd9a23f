/** What sounds, for components: what is chosen, what can be changed while it plays. */
import {
  Bpm,
  defaultForm,
  type Feel,
  type Form,
  formatFeel,
  formNamed,
  type Lesson,
  readFeel,
  sectionOf,
} from '@shedbook/core';
import type { LiveSettings } from '@shedbook/stand';
import {
  createProgram,
  loopOneBar,
  Player,
  type PlayerStatus,
  type Program,
  usePreparation,
} from '@shedbook/stand';
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { type Comparison, firstOther, type SideName, swapSides } from './sides.ts';
import type { SoundChoice } from './sound-choice.ts';

/** The sound of the open lesson. */
export interface Sound {
  readonly player: Player;
  readonly status: PlayerStatus;
  readonly choice: SoundChoice;
  readonly lesson: Lesson | null;
  /** What plays, or would. */
  readonly program: Program | null;
  readonly choose: (change: Partial<SoundChoice>) => void;
  readonly toggle: () => void;
  /** Lets another exercise follow when the form has come to its end. */
  readonly queue: (exercise: number) => void;
  /** Which of two sets of layers, mutes and balance is heard. */
  readonly side: SideName;
  /** Changes to the other side without a gap. */
  readonly compare: () => void;
}

const SoundContext = createContext<Sound | null>(null);

function firstChoice(lesson: Lesson | null): SoundChoice {
  return {
    exercise: lesson?.exercises[0]?.number ?? null,
    form: null,
    bar: null,
    layers: lesson?.layers.length ?? 1,
    bpm: lesson?.tempo.startBpm ?? 80,
    feel: lesson ? formatFeel(lesson.feel) : 'even',
    click: false,
    mute: [],
    trimDb: {},
  };
}

/** The form that is heard: the one that was chosen while the lesson has it. */
export function formHeard(lesson: Lesson, { form }: Pick<SoundChoice, 'form'>): Form {
  return (form === null ? null : formNamed(lesson, form)) ?? defaultForm(lesson);
}

function programFor(whole: Lesson | null, choice: SoundChoice): Program | null {
  if (!whole) return null;
  const exercise = whole.exercises.some((each) => each.number === choice.exercise) ? choice.exercise : null;
  const lesson = sectionOf(whole, exercise);
  const feel: Feel = readFeel(choice.feel) ?? lesson.feel;
  const form = formHeard(lesson, choice);
  const { bpm } = choice;
  // All layers of the lesson are all of each section, which may have more.
  const layers = choice.layers >= whole.layers.length ? lesson.layers.length : choice.layers;
  const program = createProgram({ ...lesson, feel }, { exercise, form, layers, bpm: Bpm(bpm) });
  return choice.bar === null ? program : loopOneBar(program, choice.bar);
}

function settingsOf({ bpm, click, mute, trimDb }: SoundChoice): LiveSettings {
  return { bpm: Bpm(bpm), click, mute, trimDb };
}

/** A choice after a change: another exercise is heard whole. */
function changed(before: SoundChoice, change: Partial<SoundChoice>): SoundChoice {
  const other = change.exercise !== undefined && change.exercise !== before.exercise;
  return { ...before, ...(other ? { bar: null } : {}), ...change };
}

/** Lets a new program take over: one bar for the whole, or the other way, at a bar line, anything else at once. */
function useTakeOver(player: Player, program: Program | null, bar: number | null): void {
  const before = useRef({ exercise: program?.exercise, bar });
  useEffect(() => {
    const sameExercise = before.current.exercise === program?.exercise;
    const atBarLine = sameExercise && before.current.bar !== bar;
    before.current = { exercise: program?.exercise, bar };
    if (program) player.replace(program, atBarLine ? 'next bar' : 'now');
  }, [player, program, bar]);
}

/** Milliseconds after a lesson was opened until the kit is made. */
const QUIET_MS = 600;

let shared: Player | null = null;

/** One player for all lessons, so that the kit is made once and there is one sound thread. */
function sharedPlayer(): Player {
  shared ??= new Player();
  return shared;
}

interface SoundProviderProps {
  readonly lesson: Lesson | null;
  readonly children: ReactNode;
}

/** Gives sound to what is inside; stops when it is left. */
export function SoundProvider({ lesson, children }: SoundProviderProps) {
  const player = sharedPlayer();
  const [comparison, setComparison] = useState((): Comparison => {
    const choice = firstChoice(lesson);
    return { choice, other: firstOther(choice), side: 'A' };
  });
  const { choice, side } = comparison;
  const status = useSyncExternalStore(player.subscribe, player.status);
  const program = useMemo(() => programFor(lesson, choice), [lesson, choice]);
  useEffect(() => () => player.stop(), [player]);
  usePreparation(player, program, QUIET_MS);
  useEffect(() => player.change(settingsOf(choice)), [player, choice]);
  useTakeOver(player, program, choice.bar);
  const toggle = () => {
    if (status === 'playing' || status === 'loading') player.stop();
    else if (program && lesson) void player.play(program, settingsOf(choice), lesson.setUp);
  };
  const choose = useCallback(
    (change: Partial<SoundChoice>) =>
      setComparison((before) => ({ ...before, choice: changed(before.choice, change) })),
    [],
  );
  const compare = () => setComparison(swapSides);
  const queue = (exercise: number) => {
    const next = programFor(lesson, { ...choice, exercise });
    if (next) player.replace(next, 'next time');
  };
  const sound: Sound = { player, status, choice, lesson, program, choose, toggle, queue, side, compare };
  return <SoundContext value={sound}>{children}</SoundContext>;
}

/** The sound of the open lesson. */
export function useSound(): Sound {
  const sound = useContext(SoundContext);
  if (!sound) throw new Error('Internal error: there is no sound here');
  return sound;
}
