/** Words that several screens of the desk say, in German. */
import type * as english from '../../english/desk/anywhere.ts';
import { translation } from '../../message/translated.ts';

/** Words of what is shown only once, to be copied. */
export const shownOnce = translation<typeof english.shownOnce>()({
  copy: 'Adresse kopieren',
  copied: 'Die Adresse ist kopiert.',
  notCopied: 'Die Adresse ließ sich nicht kopieren: markieren und von Hand kopieren.',
});

/** Words of `signIn`. */
export const signIn = translation<typeof english.signIn>()({
  out: 'Abmelden',
});
