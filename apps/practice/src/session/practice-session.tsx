/**
 * A session of practice: the lesson, what is on the stand, what plays, and what happens while it does. Everything on
 * the page takes it from here.
 *
 * Conventions: tempi in quarter notes a minute. A change of tempo by the ladder comes with the next time round;
 * another exercise or form begins anew with its count-in; all else changes at once.
 */
import { type PracticePart, takeApart } from '@shedbook/coach';
import { Bpm, type Form, inSetUp, type Lesson, sectionOf } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { createProgram, type Program } from '@shedbook/playing';
import { type Player, type PlayerStatus, useSpokenCount } from '@shedbook/stand';
import { createContext, type ReactNode, useContext, useMemo, useSyncExternalStore } from 'react';
import { type Place, usePlace } from '../page/route.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import {
  BUILD_UP,
  clickBeats,
  exampleChoice,
  formOf,
  freeChoice,
  isClicking,
  type PracticeChoice,
  padChoice,
  settingsOf,
} from './choice.ts';
import type { PracticeListener } from './events.ts';
import { type OwnGoal, useOwnGoal } from './own-goal.ts';
import { useChoice } from './use-choice.ts';
import { type Judging, useJudging } from './use-judging.ts';
import { type Ladder, useLadder } from './use-ladder.ts';
import { usePart, usePlanRun } from './use-plan-run.ts';
import { usePlaying, type When } from './use-playing.ts';

/** The session of the open pack. */
export interface PracticeSession {
  readonly pack: Pack;
  /** The section that the exercise stands in, in the student's set-up; where a part is played, the exercise is what is left of it. */
  readonly lesson: Lesson;
  /** What of the exercise is played; null: all of it. */
  readonly part: PracticePart | null;
  /** Goes to the next item of today's list at once. */
  readonly nextOnList: () => void;
  readonly place: Place;
  /** Lasting name of the page's own lesson; the one on the stand may be another of the student's. */
  readonly home: string;
  /** Number of the exercise on the stand; null for time alone or while the sheet is looked at. */
  readonly exercise: number | null;
  /** Whether one plays whatever one likes: nothing is judged. */
  readonly isFree: boolean;
  readonly form: Form;
  readonly choice: PracticeChoice;
  /** Changes what is chosen; a tempo chosen here is where the ladder stands from now on. */
  readonly choose: (change: Partial<PracticeChoice>) => void;
  /** What plays, or would; null while the sheet is looked at. */
  readonly program: Program | null;
  readonly player: Player;
  readonly status: PlayerStatus;
  readonly playing: boolean;
  readonly play: () => void;
  /** Plays what is on the stand once everything that was chosen with it has come. */
  readonly playSoon: () => void;
  readonly stop: () => void;
  readonly toggle: () => void;
  readonly ladder: Ladder;
  /** Says what the last round was; moves the tempo where the student climbs. */
  readonly judge: Judging['judge'];
  /** What came of the student's last word, or null before the first. */
  readonly answer: Judging['answer'];
  /** The student's own goal on this sheet. */
  readonly goal: OwnGoal;
  readonly setGoal: (goal: OwnGoal) => void;
  /** Tells of bars, loops and verdicts. @returns how to stop listening. */
  readonly listen: (listener: PracticeListener) => () => void;
}

const SessionContext = createContext<PracticeSession | null>(null);

function programFor(lesson: Lesson, place: Place, form: Form, choice: PracticeChoice): Program | null {
  if (place.at !== 'stage') return null;
  const exercise = lesson.exercises.some((each) => each.number === place.exercise) ? place.exercise : null;
  const { bpm, layers, click, guide } = choice;
  const clicks = { beats: clickBeats(lesson, click), subdivision: guide };
  return createProgram(lesson, { exercise, form, layers, bpm: Bpm(bpm), clicks });
}

/** The program of what is chosen. A program is made anew only where something of it has changed. */
function useProgram(lesson: Lesson, place: Place, choice: PracticeChoice) {
  const number = place.at === 'stage' ? place.exercise : undefined;
  const form = useMemo(() => formOf(lesson, choice.form, number ?? null), [lesson, choice.form, number]);
  const { bpm, layers, click, guide } = choice;
  const program = useMemo(
    () => programFor(lesson, place, form, choice),
    [lesson, place.at, number, form, bpm, layers, click, guide],
  );
  return { form, program };
}

/** What is counted aloud; null where nothing is. */
function useCounting(choice: PracticeChoice, form: Form) {
  const { tag: language } = usePracticeLanguage();
  const { click, guide, gap, isSpoken } = choice;
  const isOn = isSpoken && isClicking({ click, guide }, form);
  const isOwn = click !== 'off' || guide > 1;
  return useMemo(
    () => (isOn ? { click: isOwn, ...(gap ? { gap } : {}), language } : null),
    [isOn, isOwn, gap, language],
  );
}

interface SessionProps {
  /** The pack of what is on the stand. */
  readonly pack: Pack;
  /** Lasting name of the page's own lesson. */
  readonly home: string;
  readonly player: Player;
}

interface SessionProviderProps extends SessionProps {
  readonly children: ReactNode;
}

function useSession({ pack: given, home, player }: SessionProps): PracticeSession {
  const { pack, goal, setGoal } = useOwnGoal(given);
  const place = usePlace();
  const exercise = place.at === 'stage' ? place.exercise : null;
  const isFree = place.at === 'stage' && place.isFree === true;
  const [chosen, keep] = useChoice(pack.id, pack.lesson, exercise);
  const part = usePart(place, home);
  const section = sectionOf(pack.lesson, exercise);
  const choice = useMemo(() => {
    if (isFree) return freeChoice(pack.lesson, chosen);
    return exampleChoice(section, exercise, padChoice(pack.lesson, exercise, chosen));
  }, [isFree, pack.lesson, section, exercise, chosen]);
  const lesson = useMemo(() => {
    const whole = inSetUp(section, choice.setUp);
    return part && exercise !== null ? takeApart(whole, exercise, part) : whole;
  }, [section, choice.setUp, part, exercise]);
  const ladder = useLadder(lesson, exercise, choice.bpm);
  const { form, program } = useProgram(lesson, place, choice);
  const settings = useMemo(() => settingsOf(lesson, choice), [lesson, choice]);
  useSpokenCount(player, useCounting(choice, form));
  const status = useSyncExternalStore(player.subscribe, player.status);
  const change = (next: Partial<PracticeChoice>, when: When) => {
    playing.changeWith(when);
    keep(next);
  };
  const playing = usePlaying({
    ...{ player, status, program, settings, lesson, choice, change },
    part: part?.kind ?? null,
  });
  const choose = (next: Partial<PracticeChoice>) => {
    if (next.bpm !== undefined) ladder.standAt(next.bpm);
    change(next.form === BUILD_UP ? { ...next, layers: 1 } : next, 'now');
  };
  const { next: nextOnList } = usePlanRun({
    ...{ lesson: section, place, home, choice, choose, playing },
    sounds: status === 'playing',
    isReady: program !== null,
  });
  const { judge, answer } = useJudging({ playing, ladder, choice, change });
  const { play, playSoon, stop, toggle, listen } = playing;
  const sounding = status === 'playing' || status === 'loading';
  return {
    ...{
      pack,
      lesson,
      part,
      nextOnList,
      place,
      home,
      exercise,
      isFree,
      form,
      choice,
      choose,
      program,
      player,
      status,
    },
    ...{ goal, setGoal },
    ...{ playing: sounding, play, playSoon, stop, toggle, ladder, judge, answer, listen },
  };
}

/** Gives a session to what is inside. */
export function SessionProvider({ children, ...session }: SessionProviderProps) {
  return <SessionContext value={useSession(session)}>{children}</SessionContext>;
}

/** The session of the open pack. */
export function usePracticeSession(): PracticeSession {
  const session = useContext(SessionContext);
  if (!session) throw new Error('Internal error: there is no session here');
  return session;
}
