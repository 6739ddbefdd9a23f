/** Ears and body, in German. */
import type * as english from '../../english/hearing/care.ts';
import { translation } from '../../message/translated.ts';

/** Words of `care`. */
export const care = translation<typeof english.care>()({
  title: 'Ohren und Körper',
  first: 'Örtliche Regeln und der Rat einer zugelassenen Fachperson gehen allem hier vor.',
  protect: 'Schlagzeug ist laut. Trag Gehörschutz, der passt, und stell die Aufnahme nicht lauter als nötig.',
  ringing:
    'Wenn nach dem Spielen die Ohren klingeln oder alles dumpf klingt, hör für heute auf und gönn ihnen Ruhe.',
  warmUp: 'Fang langsam und leise an, und sitz so, dass nichts sich strecken muss.',
  pain: 'Hör auf, wenn etwas weh tut. Spiel nicht durch den Schmerz; bleibt er oder kommt er wieder, geh zu einer zugelassenen Fachperson.',
  rest: 'Zeit für eine Pause: Stöcke weg, aufstehen, Hände und Ohren ausruhen.',
  later: 'Später',
  exposure: 'Wie lange bei diesem Pegel',
  level: 'Pegel am Ohr',
  db: '{$db :number} dBA',
  meter:
    'Miss ihn mit einem Schallpegelmesser, wo deine Ohren sind; ein ganzes Schlagzeug hat oft 95 bis 110 dBA.',
  whose: 'Wessen Ohren',
  listeners: {
    adult: 'erwachsen',
    child: 'Kind oder empfindliche Ohren',
  },
  left: '.input {$span :string} .match $span week {{Bei {$db :number} dBA bleiben diese Woche etwa {$time}, Gehörschutz nicht eingerechnet.}} * {{Bei {$db :number} dBA bleiben heute etwa {$time}, Gehörschutz nicht eingerechnet.}}',
  usedUp: 'Bei {$db :number} dBA ist die empfohlene Zeit verbraucht; spiel auf einem Pad oder ohne Klang.',
  source: 'Nach NIOSH 98-126 für einen Tag und WHO-ITU H.870 für eine Woche. Auskunft, kein ärztlicher Rat.',
});
