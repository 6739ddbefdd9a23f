/** The catalogues of the line check, each loaded when somebody opens it. */
import type { lineCheck } from '../english/line-check.ts';
import type { LanguageTag } from '../language/languages.ts';
import { type Spoken, speak } from '../message/speak.ts';

/** The words of the line check. */
export type LineCheckWords = Spoken<typeof lineCheck>;

const LOADERS: Readonly<Record<LanguageTag, () => Promise<LineCheckWords>>> = {
  en: async () => {
    const [{ lineCheck: english }, { ENGLISH_TONGUE }] = await Promise.all([
      import('../english/line-check.ts'),
      import('../english/tongue.ts'),
    ]);
    return speak(english, ENGLISH_TONGUE);
  },
  de: async () => {
    const [{ lineCheck: german }, { GERMAN_TONGUE }] = await Promise.all([
      import('../german/line-check.ts'),
      import('../german/tongue.ts'),
    ]);
    return speak(german, GERMAN_TONGUE);
  },
};

/** The words of the line check in a language. */
export function loadLineCheck(tag: LanguageTag): Promise<LineCheckWords> {
  return LOADERS[tag]();
}
