/** Work on the groove of a lesson or of one of its sections; each change is one step that can be undone. */
import type { How, Layer, Lesson, Limb, Pattern, Voice } from '@shedbook/core';
import { useSay } from '@shedbook/stand';
import { useDocument } from '../document/use-document.ts';
import {
  addVoice,
  changeVoice,
  type GroovePlace,
  removeVoice,
  setComping,
  setExerciseLevelOf,
  setHow,
  setLayers,
  setLead,
  setLevel,
  setLimb,
  takeLessonGroove,
} from '../edit/groove.ts';
import { useWords } from '../words/words.tsx';

/** Every change of a groove. */
export interface GrooveWork {
  readonly change: (voice: Voice, pattern: Pattern) => void;
  readonly add: (voice: Voice) => void;
  readonly remove: (voice: Voice) => void;
  readonly setLevel: (voice: Voice, levelDb: number) => void;
  readonly setExerciseLevel: (voice: Voice, levelDb: number) => void;
  readonly setHow: (voice: Voice, how: How) => void;
  readonly setLimb: (voice: Voice, limb: Limb) => void;
  readonly setLead: (voice: Voice) => void;
  readonly setComping: (voice: Voice) => void;
  readonly setLayers: (layers: readonly Layer['joins'][]) => void;
  /** Lets the section take the lesson's groove again. */
  readonly takeLessons: () => void;
}

/** The work on a groove of `whole`. */
export function useGroove(whole: Lesson, place: GroovePlace): GrooveWork {
  const document = useDocument();
  const words = useWords();
  const say = useSay();
  const edit = (change: (text: string) => string) => document.edit(change(document.state().text));
  return {
    change: (voice, pattern) => edit((text) => changeVoice(text, place, voice, pattern)),
    add: (voice) => edit((text) => addVoice(text, place, voice)),
    remove: (voice) => {
      edit((text) => removeVoice(text, place, voice));
      say(words.groove.removed({ voice }), { label: words.desk.undo, run: () => void document.undo() });
    },
    setLevel: (voice, levelDb) => edit((text) => setLevel(text, place, voice, levelDb)),
    setExerciseLevel: (voice, levelDb) => edit((text) => setExerciseLevelOf(text, place, voice, levelDb)),
    setHow: (voice, how) => edit((text) => setHow(text, place, voice, how)),
    setLimb: (voice, limb) => edit((text) => setLimb(text, place, voice, limb)),
    setLead: (voice) => edit((text) => setLead(text, place, voice)),
    setComping: (voice) => edit((text) => setComping(text, whole, place, voice)),
    setLayers: (layers) => edit((text) => setLayers(text, place, layers)),
    takeLessons: () => {
      const { section } = place;
      if (section !== null) edit((text) => takeLessonGroove(text, section));
    },
  };
}
