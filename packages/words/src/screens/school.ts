/** The catalogues of a school and of signing in, each loaded when somebody reads it. */
import type { school } from '../english/school.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of these screens. */
export type SchoolWords = Spoken<typeof school>;

const LOADERS: Readonly<Record<LanguageTag, () => Promise<SchoolWords>>> = {
  en: async () => {
    const [{ school: english }, { ENGLISH_TONGUE }] = await Promise.all([
      import('../english/school.ts'),
      import('../english/tongue.ts'),
    ]);
    return speak(english, ENGLISH_TONGUE);
  },
  de: async () => {
    const [{ school: german }, { GERMAN_TONGUE }] = await Promise.all([
      import('../german/school.ts'),
      import('../german/tongue.ts'),
    ]);
    return speak(german, GERMAN_TONGUE);
  },
};

/** The words of these screens in a language. */
export function loadSchool(tag: LanguageTag): Promise<SchoolWords> {
  return LOADERS[tag]();
}
