/** Wer was getan hat, in German. */
import type * as english from '../english/journal.ts';
import { translation } from '../message/translated.ts';

/** An entry. */
export const entries = translation<typeof english.entries>()({
  entry: '{$by}: {$what}',
  entryOf: '{$by}: {$what} ({$whom})',
  erasedStudent: 'ein gelöschter Schüler',
  aged: '.input {$n :integer} .match $n one {{{$n} Aufnahme wegen ihres Alters gelöscht}} * {{{$n} Aufnahmen wegen ihres Alters gelöscht}}',
  doers: {
    desk: 'Das Pult',
    student: 'Der Schüler',
    somebody: 'Jemand',
    computer: 'Dieser Computer',
    server: 'Das Programm',
  },
  deeds: {
    'signed-in': 'angemeldet',
    'sign-in-refused': 'falsche Passphrase',
    'signed-out': 'abgemeldet',
    'passphrase-set': 'Passphrase gesetzt',
    'link-made': 'privaten Link gemacht',
    'link-revoked': 'privaten Link zurückgenommen',
    'consent-noted': 'festgehalten, wer über Aufnahmen entscheidet',
    'take-sent': 'Aufnahme geschickt',
    'take-taken-back': 'Aufnahme zurückgenommen',
    'take-heard': 'Aufnahme gehört',
    'note-spoken': 'Notiz zu einer Aufnahme gesprochen',
    'note-taken-back': 'gesprochene Notiz zurückgenommen',
    'exercises-set': 'Übungen in einer Stunde aufgegeben',
    'take-kept': 'Aufnahme von Hand behalten',
    'take-not-kept': 'Aufnahme nicht länger von Hand behalten',
    'takes-aged': 'Aufnahmen wegen ihres Alters gelöscht',
    'keeping-set': 'festgelegt, wie lange Aufnahmen bleiben',
    'practice-exported': 'Übungsheft als Tabelle gesichert',
    'everything-exported': 'alles als JSON gesichert',
    'backed-up': 'alles gesichert',
    'backup-restored': 'Sicherung zurückgeholt',
    'progress-printed': 'Fortschrittsblatt gedruckt',
    'lesson-erased': 'Lektion gelöscht',
    'hour-erased': 'Stunde im Unterrichtsheft gelöscht',
    'practice-erased': 'Einträge im Übungsheft gelöscht',
    'student-removed': 'Schüler aus der Liste genommen',
    'student-restored': 'Schüler zurückgeholt',
    'student-erased': 'Schüler endgültig gelöscht',
  },
});
