/** Performances on their way to a film: sent part by part, listened to, and thrown away with the page. */
import { type HeardPerformance, PART_BYTES } from '@shedbook/routes';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';

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

function drop(performance: string | null): void {
  if (performance !== null) ask('dropPerformance', { params: { performance } }).catch(() => undefined);
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
      for (const { performance } of latest.current) drop(performance);
      latest.current = [];
    },
    [],
  );
  const isWanted = (key: number) => latest.current.some((each) => each.key === key);
  const change = (key: number, next: Partial<SentPerformance>) =>
    setAll((before) => before.map((each) => (each.key === key ? { ...each, ...next } : each)));
  const send = async (key: number, file: File, played: PlayedIn): Promise<void> => {
    const { performance } = await ask('beginPerformance', { body: {} });
    if (!isWanted(key)) return drop(performance);
    change(key, { performance });
    for (let at = 0; at < file.size; at += PART_BYTES) {
      change(key, { state: { at: 'sending', share: at / file.size } });
      const body = file.slice(at, at + PART_BYTES);
      await ask('sendPerformance', { params: { performance, at }, body });
      if (!isWanted(key)) return drop(performance);
    }
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
        change(key, { state: { at: 'refused', why: wordsFor(error, words) } }),
      );
    },
    remove: (key: number) => {
      drop(latest.current.find((each) => each.key === key)?.performance ?? null);
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
