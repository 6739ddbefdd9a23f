/** What sounds, for components: what is chosen, what can be changed while it plays. */
import type { Lesson } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import { type Player, type PlayerStatus, usePreparation, useSpokenCount } from '@shedbook/stand';
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
import { useLanguage } from '../words/words.tsx';
import { type Heard, heardOf, programOf, settingsOf } from './heard.ts';
import { sharedPlayer } from './shared-player.ts';
import { type Comparison, firstOther, type SideName, swapSides } from './sides.ts';
import { AS_WRITTEN, type SoundChoice } from './sound-choice.ts';

/** The sound of the open lesson. */
export interface Sound {
  readonly player: Player;
  readonly status: PlayerStatus;
  readonly choice: SoundChoice;
  readonly lesson: Lesson | null;
  /** What of the lesson is heard by that choice. */
  readonly heard: Heard | null;
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

/** What is chosen as a lesson opens. */
function firstComparison(lesson: Lesson | null): Comparison {
  const choice = { ...AS_WRITTEN, exercise: lesson?.exercises[0]?.number ?? null };
  return { choice, other: firstOther(choice, lesson?.layers ?? []), side: 'A' };
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

/** What is counted aloud by a choice; null where nothing is. */
function useCounting({ click, clicks: { isSpoken, gap } }: SoundChoice) {
  const { tag: language } = useLanguage();
  const isOn = click && isSpoken;
  return useMemo(
    () => (isOn ? { click: true, ...(gap ? { gap } : {}), language } : null),
    [isOn, gap, language],
  );
}

/** Milliseconds after a lesson was opened until the kit is made. */
const QUIET_MS = 600;

interface SoundProviderProps {
  readonly lesson: Lesson | null;
  readonly children: ReactNode;
}

/** Gives sound to what is inside; stops when it is left. */
export function SoundProvider({ lesson, children }: SoundProviderProps) {
  const player = sharedPlayer();
  const [comparison, setComparison] = useState(() => firstComparison(lesson));
  const { choice, side } = comparison;
  const status = useSyncExternalStore(player.subscribe, player.status);
  const heard = useMemo(() => lesson && heardOf(lesson, choice), [lesson, choice]);
  const program = useMemo(() => heard && programOf(heard), [heard]);
  useEffect(() => () => player.stop(), [player]);
  usePreparation(player, program, QUIET_MS);
  useEffect(() => {
    if (heard) player.change(settingsOf(heard, choice));
  }, [player, heard, choice]);
  useTakeOver(player, program, heard?.bar ?? null);
  useSpokenCount(player, useCounting(choice));
  const started = useRef<number | null | undefined>(undefined);
  const toggle = () => {
    if (status === 'playing' || status === 'loading') return player.stop();
    if (!program || !heard) return;
    // What the device took away goes on from the bar where it stopped.
    const from = started.current === program.exercise ? (player.held() ?? undefined) : undefined;
    started.current = program.exercise;
    void player.play(program, settingsOf(heard, choice), heard.section.setUp, from);
  };
  const choose = useCallback(
    (change: Partial<SoundChoice>) =>
      setComparison((before) => ({ ...before, choice: changed(before.choice, change) })),
    [],
  );
  const compare = () => setComparison(swapSides);
  const queue = (exercise: number) => {
    if (lesson) player.replace(programOf(heardOf(lesson, { ...choice, exercise })), 'next time');
  };
  const sound: Sound = {
    player,
    status,
    choice,
    lesson,
    heard,
    program,
    choose,
    toggle,
    queue,
    side,
    compare,
  };
  return <SoundContext value={sound}>{children}</SoundContext>;
}

/** The sound of the open lesson. */
export function useSound(): Sound {
  const sound = useContext(SoundContext);
  if (!sound) throw new Error('Internal error: there is no sound here');
  return sound;
}
