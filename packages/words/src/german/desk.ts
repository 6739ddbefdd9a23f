/** Every word of the desk, in German; what the students’ screen alone says is beside it. */
import { brokenPage } from './broken-page.ts';
import { counts } from './counts.ts';
import { shownOnce, signIn } from './desk/anywhere.ts';
import { desk, guide } from './desk/desk.ts';
import { dictation } from './desk/dictation.ts';
import { films } from './desk/films.ts';
import { forms } from './desk/forms.ts';
import { conflict, heading, lesson } from './desk/lesson.ts';
import { groove, page, text } from './desk/page.ts';
import { print } from './desk/print.ts';
import { rearrange } from './desk/rearrange.ts';
import { recordings } from './desk/recordings.ts';
import { refusals, settings } from './desk/settings.ts';
import { compose, pedal, room, sound } from './desk/sound.ts';
import { how, limbs, marks, voices } from './drum-set.ts';
import { durations } from './durations.ts';
import { LEVEL_NAMES } from './levels.ts';
import { sizes } from './sizes.ts';
import { soundStart } from './sound-start.ts';

/** The messages. */
export const deskMessages = {
  language: 'Deutsch',
  voices,
  limbs,
  marks,
  how,
  counts,
  brokenPage,
  desk,
  guide,
  lesson,
  conflict,
  heading,
  page,
  groove,
  text,
  sound,
  compose,
  dictation,
  films,
  forms,
  rearrange,
  recordings,
  durations,
  sizes,
  soundStart,
  room,
  pedal,
  print,
  levels: LEVEL_NAMES,
  shownOnce,
  signIn,
  settings,
  refusals,
} as const;
