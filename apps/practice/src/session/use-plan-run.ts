/**
 * Today's list on the stand: its items play one after the other, each for its minutes and from its tempo; a visit ends
 * with a round, a break by the clock.
 */
import { ladderOf, type PlanItem, type PracticePart } from '@shedbook/coach';
import { defaultForm, type Lesson } from '@shedbook/core';
import { useEffect, useRef } from 'react';
import { goTo, type Place } from '../page/route.ts';
import type { PracticeChoice } from './choice.ts';
import {
  afterItem,
  afterSeconds,
  currentRun,
  itemOf,
  type PlanRun,
  placeOf,
  setRun,
  useRun,
} from './plan-run.ts';
import type { Playing } from './use-playing.ts';

interface PlanRunProps {
  readonly lesson: Lesson;
  readonly place: Place;
  /** Lasting name of the page's own lesson. */
  readonly home: string;
  readonly choice: PracticeChoice;
  readonly choose: (change: Partial<PracticeChoice>) => void;
  readonly playing: Playing;
  /** Whether something sounds. */
  readonly sounds: boolean;
  /** Whether there is something to play on the stand. */
  readonly isReady: boolean;
}

/** Milliseconds between looks at the clock. */
const TICK_MS = 500;

/** Whether an item is what stands on the stand. */
function isOnStand(item: PlanItem | null, place: Place, home: string): boolean {
  if (item === null || item.kind === 'break' || place.at !== 'stage') return false;
  const isFree = place.isFree === true;
  const isOfLesson = item.lesson === (place.lesson ?? home);
  return isOfLesson && isFree === (item.kind === 'free') && place.exercise === item.number;
}

/** What of the exercise on the stand is played now; null: all of it. */
export function usePart(place: Place, home: string): PracticePart | null {
  const run = useRun();
  const item = run && itemOf(run);
  return item && isOnStand(item, place, home) ? item.part : null;
}

/** Where an item begins: from the plan, or on the same day half a step under where it was left. */
function tempoOf(item: PlanItem, lesson: Lesson, kept: number): number | null {
  if (!item.tempo) return null;
  if (item.kind !== 'once more') return item.tempo.fromBpm;
  const { lowestBpm, stepBpm } = ladderOf(lesson.tempo);
  return Math.max(lowestBpm, Math.round(kept - stepBpm / 2));
}

/** Puts an item on the stand, or lets the sticks lie. */
function show(run: PlanRun | null, playing: Playing, home: string): void {
  const item = run && itemOf(run);
  playing.stop();
  if (!item) goTo({ at: 'sheet' });
  else if (item.kind !== 'break') goTo(placeOf(item, home));
}

/** Goes through the list that was taken up. @returns how to go on to its next item at once. */
export function usePlanRun(props: PlanRunProps): { readonly next: () => void } {
  const latest = useRef(props);
  latest.current = props;
  const run = useRun();
  const begun = useRef<string | null>(null);
  const item = run && itemOf(run);
  const isOn = isOnStand(item, props.place, props.home);
  const next = () => {
    const after = afterItem(currentRun() as PlanRun);
    setRun(after);
    show(after, latest.current.playing, latest.current.home);
  };
  const name = run ? `${run.plan.day} ${run.plan.minutes} ${run.at}` : null;
  useEffect(() => {
    if (name === null || !isOn || !item || !props.isReady || begun.current === name) return;
    begun.current = name;
    const { lesson, choice, choose, playing } = latest.current;
    const bpm = tempoOf(item, lesson, choice.bpm);
    const whole = { form: defaultForm(lesson).name, layers: lesson.layers.length, ladder: true };
    choose({ ...whole, ...(bpm === null ? {} : { bpm }) });
    playing.playSoon();
  }, [name, isOn, item, props.isReady]);
  useEffect(() => {
    if (name === null || !(item?.kind === 'break' || (isOn && props.sounds))) return;
    const timer = setInterval(() => {
      const now = currentRun();
      if (!now) return;
      setRun(afterSeconds(now, TICK_MS / 1000));
      if (item?.kind === 'break' && now.leftSeconds <= 0) next();
    }, TICK_MS);
    return () => clearInterval(timer);
  }, [name, isOn, props.sounds, item]);
  const { listen } = props.playing;
  useEffect(
    () =>
      listen((event) => {
        const now = currentRun();
        if (event.kind === 'loop' && now && now.leftSeconds <= 0) next();
      }),
    [listen],
  );
  return { next };
}
