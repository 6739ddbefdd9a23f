/** What a page says before it is one, where the browser is too old for it or it lies in no place to run from, in German. */
import type * as english from '../english/old-browser.ts';
import { translation } from '../message/translated.ts';

/** Instead of the page. */
export const oldBrowser = translation<typeof english.oldBrowser>()({
  old: {
    title: 'Dieser Browser ist zu alt für diese Seite',
    lead: 'Sie braucht Chrome oder Edge {$chrome}, Firefox {$firefox} oder Safari {$safari} oder etwas Neueres; auf iPhone und iPad System {$system}. Bring Browser oder Gerät auf den neuesten Stand oder öffne die Adresse auf einem anderen Gerät.',
  },
  file: {
    title: 'Diese Seite muss aus dem Netz geöffnet werden',
    lead: 'Aus einer Datei heraus kann sie nicht spielen. Wenn du hier lernst: Frag deine Lehrkraft nach der Adresse und öffne sie im Browser. Wenn du unterrichtest: Pack den Ordner auf einem Webserver aus oder mach am Pult einen privaten Link.',
  },
  script: {
    title: 'Diese Seite braucht einen Browser mit JavaScript',
    lead: 'Wenn du das in einer Datei- oder Mail-App siehst: Frag deine Lehrkraft nach der Adresse der Seite und öffne sie im Browser. Wenn du es in einem Browser siehst: JavaScript ist in seinen Einstellungen ausgeschaltet.',
  },
  sheet: 'Das gedruckte Blatt öffnet sich ohne all das: ',
});
