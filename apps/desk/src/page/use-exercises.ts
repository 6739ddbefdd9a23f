/** The exercises of the open lesson while they are being written: which one is chosen, and every change to them. */

import { type Lesson, sectionsOf } from '@shedbook/core';
import { useSay } from '@shedbook/stand';
import { type KeyboardEvent, useCallback, useRef, useState } from 'react';
import { useNamesInUse } from '../document/names-in-use.ts';
import { useDocument } from '../document/use-document.ts';
import {
  changeExercise,
  duplicateExercise,
  type ExerciseHome,
  homeOf,
  insertExercise,
  removeExercise,
  type Unnumbered,
  withExercises,
  withMoved,
} from '../edit/exercises.ts';
import { isSilent } from '../edit/is-silent.ts';
import type { SlotPlace } from '../edit/strokes.ts';
import { samePlaceIn } from '../line/slots.ts';
import { useWords } from '../words/words.tsx';
import type { Held } from './exercise-row.tsx';
import type { ExerciseAction } from './pencil-box.tsx';
import { rearrangingOf } from './rearranging-keys.ts';
import { type Rearrangement, useRearranging } from './use-rearranging.ts';

/** Which exercise is chosen (from 0), and its slot. */
export interface Choice {
  readonly index: number;
  /** Which of its voices is being written, from 0. */
  readonly part: number;
  readonly place: SlotPlace;
  /** Whether the slot is to take the focus. */
  readonly focus: boolean;
}

const START: Choice = { index: 0, part: 0, place: { bar: 0, beat: 0, slot: 0 }, focus: false };

/** Choosing and changing. */
export interface ExerciseWork {
  readonly choice: Choice;
  /** An exercise was pressed: it is chosen, or selected beside the chosen one. */
  readonly press: (number: number, place: SlotPlace, held: Held) => void;
  readonly rearranging: Rearrangement;
  readonly setPlace: (place: SlotPlace) => void;
  readonly setPart: (part: number) => void;
  readonly change: (number: number, exercise: Unnumbered) => void;
  /** Puts exercises that were heard behind the section that is written in. */
  readonly keepHeard: (exercises: readonly Unnumbered[]) => void;
  readonly act: (action: ExerciseAction) => void;
  /** Puts a silent exercise into a section, by its number among all from 0. */
  readonly addTo: (section: Lesson, index: number) => void;
  readonly move: (from: number, to: number) => void;
  readonly onKey: (event: KeyboardEvent) => void;
}

/** The work on a lesson's exercises. */
export function useExercises(lesson: Lesson): ExerciseWork {
  const document = useDocument();
  const inUse = useNamesInUse(document.id);
  const words = useWords();
  const say = useSay();
  const [choice, setChoice] = useState<Choice>(START);
  const { exercises } = lesson;
  const index = Math.min(choice.index, Math.max(0, exercises.length - 1));
  const numberAt = (at: number) => exercises[at]?.number ?? 1;
  const indexOf = (number: number) => exercises.findIndex((each) => each.number === number);
  /** Changes the exercises of the section that a place of the lesson stands in. */
  const keep = (place: number, change: (home: ExerciseHome) => readonly Unnumbered[]) => {
    const home = homeOf(lesson, place);
    document.edit(withExercises(document.state().text, home.section, change(home), home.index));
  };

  const parts = exercises[index]?.parts ?? [];
  const part = Math.min(choice.part, Math.max(0, parts.length - 1));
  const slotsHere = parts[part]?.pattern.bars[choice.place.bar]?.[choice.place.beat]?.marks.length ?? 1;

  const setPart = (next: number) => {
    const pattern = parts[next]?.pattern;
    const place = pattern ? samePlaceIn(pattern, choice.place, slotsHere) : choice.place;
    setChoice({ ...choice, index, part: next, place, focus: true });
  };
  const go = (to: number) => {
    const target = exercises[to]?.parts[0]?.pattern;
    if (!target) return;
    setChoice({ index: to, part: 0, place: samePlaceIn(target, choice.place, slotsHere), focus: true });
  };
  const move = (from: number, to: number) => {
    if (to < 0 || to >= exercises.length || from === to) return;
    document.edit(withMoved(document.state().text, lesson, from, to));
    setChoice({ ...choice, index: to, focus: true });
    const now = document.state().lesson?.exercises[to]?.number;
    say(words.page.moved({ from: numberAt(from), to: now ?? numberAt(to) }));
  };
  const add = () => {
    const at = exercises.length === 0 ? 0 : index + 1;
    keep(index, (home) => insertExercise(home.section, exercises.length === 0 ? 0 : home.at + 1));
    setChoice({ index: at, part: 0, place: START.place, focus: true });
  };
  const keepHeard = (heard: readonly Unnumbered[]) => {
    keep(index, ({ section }) => [...(section.exercises.every(isSilent) ? [] : section.exercises), ...heard]);
    say(words.dictation.kept({ n: heard.length }), {
      label: words.desk.undo,
      run: () => void document.undo(),
    });
  };
  const addTo = (section: Lesson, at: number) => {
    const before = sectionsOf(lesson)
      .slice(0, at)
      .flatMap((each) => each.exercises).length;
    document.edit(
      withExercises(document.state().text, section, insertExercise(section, section.exercises.length), at),
    );
    setChoice({ index: before + section.exercises.length, part: 0, place: START.place, focus: true });
  };
  const remove = () => {
    if (!exercises[index]) return;
    keep(index, ({ section, at }) => removeExercise(section.exercises, at));
    setChoice({ ...choice, index: Math.max(0, Math.min(index, exercises.length - 2)), focus: true });
    say(words.page.removedExercise({ n: numberAt(index) }), {
      label: words.desk.undo,
      run: () => void document.undo(),
    });
  };
  const duplicate = () => {
    keep(index, ({ section, at }) => duplicateExercise(section.exercises, at));
    setChoice({ ...choice, index: index + 1, focus: true });
  };
  const rearranging = useRearranging({
    ...{ lesson, inUse },
    choice: { ...choice, index, part },
    onGo: (to) => setChoice({ ...choice, index: to, part: 0, place: START.place, focus: true }),
  });
  const press = (number: number, place: SlotPlace, held: Held) => {
    if (rearranging.isSelecting || held.command) rearranging.toggle(number);
    else if (held.shift) rearranging.selectTo(numberAt(index), number);
    else {
      rearranging.clear();
      setChoice({ index: indexOf(number), part: 0, place, focus: true });
    }
  };
  const latestPress = useRef(press);
  latestPress.current = press;
  const act = (action: ExerciseAction) => {
    const run = {
      add,
      duplicate,
      remove,
      up: () => move(index, index - 1),
      down: () => move(index, index + 1),
    };
    run[action]();
  };
  const onKey = (event: KeyboardEvent) => {
    const vertical = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    const command = event.ctrlKey || event.metaKey;
    const rearranged = rearrangingOf(event, rearranging.unit);
    if (rearranged?.kind === 'run') rearranging.run(rearranged.what);
    else if (rearranged?.kind === 'unit') rearranging.setUnit(rearranged.unit);
    else if (vertical && event.altKey) act(vertical < 0 ? 'up' : 'down');
    else if (vertical && event.shiftKey) {
      const to = Math.min(exercises.length - 1, Math.max(0, index + vertical));
      rearranging.selectTo(numberAt(index), numberAt(to));
      go(index + vertical);
    } else if (vertical && !command) {
      rearranging.clear();
      go(index + vertical);
    } else if (event.key.toLowerCase() === 'v' && !command) setPart((part + 1) % Math.max(1, parts.length));
    else if (event.key === 'Enter') add();
    else if (command && (event.key === 'Delete' || event.key === 'Backspace')) remove();
    else return;
    event.preventDefault();
  };
  return {
    choice: { ...choice, index, part },
    setPart,
    press: useCallback((number, place, held) => latestPress.current(number, place, held), []),
    rearranging,
    setPlace: useCallback((place) => setChoice((before) => ({ ...before, place, focus: false })), []),
    change: (number, exercise) =>
      keep(indexOf(number), ({ section, at }) => changeExercise(section.exercises, at, exercise, inUse)),
    keepHeard,
    addTo,
    act,
    move,
    onKey,
  };
}
