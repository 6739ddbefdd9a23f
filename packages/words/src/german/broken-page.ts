/** What both pages say where one of them breaks, in German. */
import type * as english from '../english/broken-page.ts';
import { translation } from '../message/translated.ts';

/** Instead of the page. */
export const brokenPage = translation<typeof english.brokenPage>()({
  title: 'Diese Seite ist zusammengebrochen',
  lead: 'Das ist ein Fehler des Programms, nicht deiner. Was bis jetzt geschrieben und gespielt wurde, ist gespeichert.',
  again: 'Noch einmal öffnen',
  home: 'Zurück zum Anfang',
  copy: 'Kopieren, was geschehen ist',
  copied: 'Kopiert. Schick es an die, die sich um das Programm kümmern.',
});
