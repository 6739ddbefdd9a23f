/** Every word of the practice page, in English. */

import { brokenPage } from './broken-page.ts';
import { counts } from './counts.ts';
import { how, marks, sides, voices } from './drum-set.ts';
import { ladder, setting } from './practice/setting.ts';
import { downloads, keeping, settings, sheet, page as sheetPage, student } from './practice/sheet.ts';
import { pedal, stage, tempo } from './practice/stage.ts';
import { sizes } from './sizes.ts';
import { soundStart } from './sound-start.ts';

/** The messages. */
export const practiceMessages = {
  language: 'English',
  voices,
  marks,
  how,
  counts,
  brokenPage,
  limbs: sides,
  ...sheetPage,
  sheet,
  downloads,
  settings,
  keeping,
  student,
  sizes,
  soundStart,
  stage,
  pedal,
  tempo,
  setting,
  ladder,
} as const;
