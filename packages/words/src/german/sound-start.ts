/** What is said until a sound comes, where none comes, and where it comes by a simpler way, in German. */
import type * as english from '../english/sound-start.ts';
import { translation } from '../message/translated.ts';

/** Words beside Play. */
export const soundStart = translation<typeof english.soundStart>()({
  loading: 'Das Schlagzeug wird aufgebaut …',
  slow: 'Der Ton lässt auf sich warten. Ein einfacherer wird versucht …',
  simpler: {
    room: 'Dieses Gerät ist beschäftigt: Du hörst die Trommeln ohne den Raum um sie herum.',
    kit: 'Das Schlagzeug aufzubauen dauert hier lange. Bis es da ist, hörst du ein einfacheres.',
    plain:
      'Du hörst einen einfacheren Ton: Dieser Browser wollte den ganzen nicht spielen. Ein neuerer kann es vielleicht.',
  },
  failed: {
    output:
      'Aus diesem Gerät kam kein Ton. Beende einen Anruf, schließ andere Programme mit Ton, sieh nach Lautsprecher oder Kopfhörer; dann drück noch einmal auf Abspielen.',
    others:
      'Es kam kein Ton, auch kein einfacherer. Schließ andere Programme und Seiten, öffne diese Seite neu, dann drück noch einmal auf Abspielen.',
  },
  held: 'Der Ton wurde weggenommen, durch einen Anruf oder ein anderes Programm. Abspielen macht in dem Takt weiter, in dem es stehen blieb.',
});
