/** Performances on their way to a film: sent part by part, listened to, and thrown away with the page. */
import type { HeardPerformance } from '@shedbook/routes';
import type { DeskWords } from '@shedbook/words';
import { useEffect, useRef, useState } from 'react';
import { ask, RefusedError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';
import { dropSent, sendInParts } from './send-parts.ts';

/** How far a performance is, or why it cannot be shown. */
export type PerformanceState =
  | { readonly at: 'sending'; readonly share: number }
  | { readonly at: 'hearing' }
  | { readonly at: 'heard'; readonly heard: HeardPerformance }
  | { readonly at: 'refused'; readonly why: string };

/** A performance of an exercise. */
export interface SentPerformance {
  /** Counts up on this page. */
  readonly key: number;
  /** Its name on the server; null while there is none. */
  readonly performance: string | null;
  readonly name: string;
  readonly exercise: number;
  readonly state: PerformanceState;
}

/** What is played in a file. */
export interface PlayedIn {
  readonly exercise: number;
  /** Null for the usual form. */
  readonly form: string | null;
}

/** Why a performance cannot be followed. */
function whyNotHeard(error: unknown, words: DeskWords): string {
  const isWithout = error instanceof RefusedError && error.code === 'no-ffmpeg';
  return isWithout ? words.films.needsFfmpeg : wordsFor(error, words);
}

/** The performances of a lesson's exercises. */
export function usePerformances(id: string) {
  const words = useWords();
  const [all, setAll] = useState<readonly SentPerformance[]>([]);
  const latest = useRef(all);
  latest.current = all;
  const keys = useRef(0);
  useEffect(
    () => () => {
      for (const { performance } of latest.current) dropSent(performance);
      latest.current = [];
    },
    [],
  );
  const isWanted = (key: number) => latest.current.some((each) => each.key === key);
  const change = (key: number, next: Partial<SentPerformance>) =>
    setAll((before) => before.map((each) => (each.key === key ? { ...each, ...next } : each)));
  const send = async (key: number, file: File, played: PlayedIn): Promise<void> => {
    const performance = await sendInParts(file, {
      begun: (name) => change(key, { performance: name }),
      tell: (share) => change(key, { state: { at: 'sending', share } }),
      isWanted: () => isWanted(key),
    });
    if (performance === null) return;
    change(key, { state: { at: 'hearing' } });
    const heard = await ask('hearPerformance', { params: { id }, body: { performance, ...played } });
    change(key, { state: { at: 'heard', heard } });
  };
  return {
    all,
    add: (file: File, played: PlayedIn) => {
      keys.current += 1;
      const key = keys.current;
      const { exercise } = played;
      const fresh = { key, performance: null, name: file.name, exercise };
      const state = { at: 'sending', share: 0 } as const;
      latest.current = [...latest.current, { ...fresh, state }];
      setAll((before) => [...before, { ...fresh, state }]);
      send(key, file, played).catch((error: unknown) =>
        change(key, { state: { at: 'refused', why: whyNotHeard(error, words) } }),
      );
    },
    remove: (key: number) => {
      dropSent(latest.current.find((each) => each.key === key)?.performance ?? null);
      latest.current = latest.current.filter((each) => each.key !== key);
      setAll((before) => before.filter((each) => each.key !== key));
    },
  };
}

/** Whether one of them is still being sent or listened to. */
export function isOnItsWay(all: readonly SentPerformance[]): boolean {
  return all.some(({ state: { at } }) => at === 'sending' || at === 'hearing');
}

/** The names of those that were heard, and which of them are shown: of each exercise the one with the fewest faults. */
export function heardOf(all: readonly SentPerformance[]) {
  const heard = all.flatMap(({ key, performance, state }) =>
    performance !== null && state.at === 'heard' ? [{ key, performance, ...state.heard }] : [],
  );
  const isBest = (one: (typeof heard)[number]) =>
    heard
      .filter(({ exercise }) => exercise === one.exercise)
      .toSorted((a, b) => a.faults - b.faults)
      .indexOf(one) === 0;
  return {
    names: heard.map(({ performance }) => performance),
    shown: new Set(heard.filter(isBest).map(({ key }) => key)),
    hasPicture: heard.some(({ hasPicture }) => hasPicture),
  };
}
