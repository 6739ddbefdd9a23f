/** The catalogues of the page that looks whether a device sounds and hears, each loaded when somebody reads it. */
import type { soundCheck } from '../english/sound-check.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the page. */
export type SoundCheckWords = Spoken<typeof soundCheck>;

const LOADERS: Readonly<Record<LanguageTag, () => Promise<SoundCheckWords>>> = {
  en: async () => {
    const [{ soundCheck: english }, { ENGLISH_TONGUE }] = await Promise.all([
      import('../english/sound-check.ts'),
      import('../english/tongue.ts'),
    ]);
    return speak(english, ENGLISH_TONGUE);
  },
  de: async () => {
    const [{ soundCheck: german }, { GERMAN_TONGUE }] = await Promise.all([
      import('../german/sound-check.ts'),
      import('../german/tongue.ts'),
    ]);
    return speak(german, GERMAN_TONGUE);
  },
};

/** The words of the page in a language. */
export function loadSoundCheck(tag: LanguageTag): Promise<SoundCheckWords> {
  return LOADERS[tag]();
}
