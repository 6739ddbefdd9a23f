/** Forms of a lesson, in German. */
import type * as english from '../../english/desk/forms.ts';
import { translation } from '../../message/translated.ts';

/** Words of `forms`. */
export const forms = translation<typeof english.forms>()({
  title: 'Formen',
  opens: 'Formen',
  hear: 'Anhören',
  add: 'Neue Form aus dieser',
  newName: 'Meine Form',
  removeForm: 'Diese Form löschen',
  sections: 'Formteile',
  section: 'Formteil {$n :integer}',
  plays: 'Was erklingt',
  play: {
    pattern: 'Übung',
    time: 'nur der Groove',
    rest: 'Stille',
  },
  click: 'Klick',
  clicks: {
    asked: 'wie gewählt',
    all: 'jeder Schlag',
    backbeat: 'jeder zweite Schlag',
    bar: 'erster Schlag im Takt',
    none: 'stumm',
    other: 'wie geschrieben',
  },
  bars: 'Takte',
  repeat: 'Durchgänge',
  countIn: 'Takte zum Einzählen',
  addSection: 'Formteil anfügen',
  up: 'Formteil {$n :integer} nach oben',
  down: 'Formteil {$n :integer} nach unten',
  remove: 'Formteil {$n :integer} löschen',
  fewer: '{$what}: einer weniger',
  more: '{$what}: einer mehr',
  addEnding: 'Mit einem Akzent enden',
  noEnding: 'Kein Akzent am Ende',
  ending: 'Der letzte Takt endet auf',
  onBeat: 'Zählzeit',
  voices: 'Wer schlägt',
});
