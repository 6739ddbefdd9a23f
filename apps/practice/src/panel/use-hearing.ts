/** Hearing for components: one ear a player, what it said last, what follows from it. */
import type { HandsFreeState } from '@shedbook/coach';
import { ontoPad, padVoice } from '@shedbook/core';
import { LOOP_VERDICT } from '@shedbook/judge';
import type { KnownKit } from '@shedbook/listen';
import type { Player } from '@shedbook/stand';
import { useEffect, useMemo, useReducer, useRef, useSyncExternalStore } from 'react';
import { latencyOf } from '../device/latency-store.ts';
import type { EarState } from '../ear/ear.ts';
import { Hearing, type JudgedLoop, type StretchEnded } from '../ear/hearing.ts';
import { useMarks } from '../marks/use-marks.ts';
import { goTo } from '../page/route.ts';
import type { HearingSettings } from '../session/hearing-settings.ts';
import { type PracticeSession, usePracticeSession } from '../session/practice-session.tsx';
import { arriveAt, type Course, goOn, type Said } from './hands-free.ts';

/** Judged loops that are remembered for the page. */
const SHOWN_LOOPS = 10;

/** Milliseconds that what is said stands before the next exercise comes. */
const SAYING_MS = 2500;

/** So long the ear waits for somebody who left the stand, in milliseconds; then it lets the microphone go. */
const WAITING_MS = 30_000;

/** Lets go of the microphone when the stand has been left for a while; going on to another exercise is no leaving. */
function useLettingGo(hearing: Hearing): void {
  useEffect(() => {
    clearTimeout(waiting.get(hearing));
    return () => {
      waiting.set(
        hearing,
        setTimeout(() => hearing.close(), WAITING_MS),
      );
    };
  }, [hearing]);
}

const waiting = new WeakMap<Hearing, ReturnType<typeof setTimeout>>();

/** Milliseconds after which a take that was left behind is looked for: page and picture come first. */
const LOOK_MS = 1500;

/** Keeps the take in hand, and finds the one that a page which was closed left behind. */
function useHand(hearing: Hearing, lesson: string, find: (ended: StretchEnded) => void): void {
  const latest = useRef(find);
  latest.current = find;
  useEffect(() => {
    const ends: (() => void)[] = [];
    let isHere = true;
    let isBegun = false;
    const begin = async () => {
      if (isBegun) return;
      isBegun = true;
      const { HandKeeper, handOf } = await import('../takes/hand-keeper.ts');
      if (!isHere) return;
      const keeper = new HandKeeper(lesson, () => hearing.ear.state().latencyMs / 1000);
      ends.push(hearing.listen((event) => keeper.take(event)));
      const ended = await handOf(lesson, hearing);
      if (ended && isHere) latest.current(ended);
    };
    const start = () => void begin().catch(() => undefined);
    const look = () => {
      if (hearing.ear.state().phase !== 'off') start();
    };
    const timer = setTimeout(start, LOOK_MS);
    ends.push(hearing.ear.subscribe(look), () => clearTimeout(timer));
    look();
    return () => {
      isHere = false;
      for (const end of ends) end();
    };
  }, [hearing, lesson]);
}

/** The one that practises now; the ear outlives the panels. */
const sessions = new WeakMap<Player, { session: PracticeSession; settings: HearingSettings }>();
const ears = new WeakMap<Player, Hearing>();

/** What the chosen line check told of the kit: fetched with whoever keeps it when a microphone is opened. */
async function chosenKit(): Promise<KnownKit | null> {
  const { chosenKit: choose } = await import('../line-check/kit-store.ts');
  return choose();
}

function hearingOf(player: Player): Hearing {
  const there = ears.get(player);
  if (there) return there;
  const practised = () => {
    const now = sessions.get(player);
    if (!now) throw new Error('Internal error: nobody practises');
    const { lesson, exercise, form, choice } = now.session;
    const { layers, mine } = choice;
    const { level } = now.settings;
    const onPad = choice.surface === 'pad' ? padVoice(lesson, exercise) : null;
    if (onPad === null) return { task: { lesson, exercise, form, layers, mine }, level, onPad };
    const asked = ontoPad({ lesson, exercise, form });
    const one = { mine: [lesson.limbs[onPad]], layers: lesson.layers.length };
    return { task: { ...asked, ...one }, level, onPad };
  };
  const hearing = new Hearing(player, practised, latencyOf, chosenKit);
  ears.set(player, hearing);
  return hearing;
}

/** What a page shows of hearing. */
export interface HearingView {
  readonly hearing: Hearing;
  readonly ear: EarState;
  /** The last loops of this exercise, newest last. */
  readonly loops: readonly JudgedLoop[];
  readonly said: Said | null;
  readonly isStaying: boolean;
  readonly ended: StretchEnded | null;
  /** Lets the take in hand go. */
  readonly letGo: () => void;
  readonly stay: () => void;
  readonly goOn: () => void;
}

interface State {
  readonly loops: readonly JudgedLoop[];
  readonly said: Said | null;
  readonly isStaying: boolean;
  readonly ended: StretchEnded | null;
}

const NOTHING: State = { loops: [], said: null, isStaying: false, ended: null };

function useGoing(session: PracticeSession, settings: HearingSettings, say: (said: Said | null) => void) {
  const going = useRef<HandsFreeState | null>(null);
  const sentTo = useRef(0);
  const course = useMemo(
    (): Course => ({
      numbers: session.lesson.exercises.map((each) => each.number),
      comfortableLoops: settings.comfortableLoops,
    }),
    [session.lesson, settings.comfortableLoops],
  );
  const standing = { rule: session.ladder.rule, bpm: session.choice.bpm };
  const latest = useRef({ course, standing, settings, exercise: session.exercise });
  latest.current = { course, standing, settings, exercise: session.exercise };
  useEffect(() => {
    going.current = null;
  }, [session.exercise, course]);
  return (event: Parameters<typeof goOn>[2]) => {
    const { course, standing, settings, exercise } = latest.current;
    if (!settings.handsFree || exercise === null) return say(null);
    going.current ??= arriveAt(course, exercise, standing, sentTo.current);
    const { state, said, next } = goOn(course, going.current, event, standing);
    going.current = state;
    say(said);
    if (next === null) return;
    sentTo.current = state.item;
    setTimeout(() => goTo({ ...session.place, at: 'stage', exercise: next }), SAYING_MS);
  };
}

/** Hearing on the stand. */
export function useHearing(settings: HearingSettings): HearingView {
  const session = usePracticeSession();
  const hearing = hearingOf(session.player);
  sessions.set(session.player, { session, settings });
  const ear = useSyncExternalStore(hearing.ear.subscribe, hearing.ear.state);
  const [state, change] = useReducer(
    (before: State, next: Partial<State>): State => ({ ...before, ...next }),
    NOTHING,
  );
  const go = useGoing(session, settings, (said) => change({ said }));
  const latest = useRef({ session, state, go });
  latest.current = { session, state, go };
  useMarks(hearing, session);
  useLettingGo(hearing);
  useHand(hearing, session.pack.id, (ended) => {
    if (latest.current.state.ended === null) change({ ended });
  });
  useEffect(() => change({ loops: [], isStaying: false }), [session.exercise]);
  useEffect(
    () =>
      hearing.listen((event) => {
        const { session, state, go } = latest.current;
        if (event.kind === 'judged') {
          const { loop, judgement } = event.judged;
          change({ loops: [...state.loops, event.judged].slice(-SHOWN_LOOPS) });
          // A loop that was under way when the ladder moved says nothing about the new rung.
          if (Math.round(loop.bpm) !== Math.round(session.choice.bpm)) return;
          const verdict = LOOP_VERDICT[judgement.verdict.is];
          session.judge(verdict, 'ear');
          go(verdict);
        }
        if (event.kind === 'stretch ended') change({ ended: event.ended });
      }),
    [hearing],
  );
  return {
    ...state,
    hearing,
    ear,
    letGo: () => {
      change({ ended: null });
      void import('../takes/hand-store.ts')
        .then(({ dropHand }) => dropHand(session.pack.id))
        .catch(() => undefined);
    },
    stay: () => {
      change({ isStaying: true });
      go('stay');
    },
    goOn: () => {
      change({ isStaying: false });
      go('go on');
    },
  };
}
