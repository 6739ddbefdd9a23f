/** What both pages say of a foot switch, in German. */
import type * as english from '../english/foot-switch.ts';
import { translation } from '../message/translated.ts';

/** Setting it up. */
export const footSwitch = translation<typeof english.footSwitch>()({
  keys: 'Ein Blätterpedal, das Bild- oder Pfeiltasten sendet, geht ohne Weiteres.',
  midi: 'Ein MIDI-Fußschalter, ein Haltepedal oder ein Pad muss einmal gezeigt werden: „Lernen“ drücken, dann den Schalter.',
  connect: 'Auf MIDI hören',
  status: {
    off: 'MIDI wird noch nicht gehört. Der Browser fragt, ob es sein darf.',
    asking: 'Der Browser muss es erst erlauben …',
    missing: 'Dieser Browser kann kein MIDI. Tasten und Berührung gehen trotzdem.',
    refused: 'Dem Browser wurde MIDI nicht erlaubt. Tasten und Berührung gehen trotzdem.',
  },
  hears: 'Gehört wird: {$devices}.',
  nothing: 'MIDI ist erlaubt, aber noch ist nichts angeschlossen.',
  learn: 'Lernen',
  cancel: 'Nicht lernen',
  forget: 'Vergessen',
  press: 'Jetzt den Schalter drücken …',
  none: 'keiner',
  control: 'Controller {$n :integer}, Kanal {$channel :integer}',
  note: 'Note {$n :integer}, Kanal {$channel :integer}',
});
