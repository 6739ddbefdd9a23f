/** Students, in German. */
import type * as english from '../../english/desk/students.ts';
import { translation } from '../../message/translated.ts';
import { SET_UP_NAMES } from '../set-ups.ts';

/** Words of `students`. */
export const students = translation<typeof english.students>()({
  lead: 'Was sitzt, was wackelt und was als Nächstes kommt.',
  roster: 'Liste der Schüler',
  find: 'Schüler suchen',
  found: '.input {$n :integer} .match $n 0 {{Niemand heißt so.}} * {{{$n} Schüler}}',
  showMore: '{$n :integer} weitere zeigen',
  add: 'Schüler hinzufügen',
  name: 'Name',
  empty:
    'Noch steht niemand in der Liste. Einen Namen hinzufügen, dann eine Aufnahme oder das Übungsheft vom Handy oder Tablet hinzufügen.',
  keep: 'Behalten',
  erase: '{$name} endgültig löschen',
  eraseWarning:
    'Name, Übungsheft, Aufgaben und Unterrichtsheft werden sofort gelöscht und auf dem Laufwerk überschrieben, mit den Kopien, die es davon gibt. Nichts bringt sie zurück. Lektionen bleiben; ein Name, der in einer steht, bleibt dort.',
  erased: '{$name} ist gelöscht.',
  remove: '{$name} aus der Liste nehmen',
  removed: '{$name} ist aus der Liste genommen.',
  nothingHeard: 'Noch nichts gehört',
  daysAway:
    '.input {$days :integer} .match $days 0 {{heute gespielt}} 1 {{gestern gespielt}} * {{vor {$days} Tagen gespielt}}',
  clockAhead: 'gespielt, als die Uhr des Geräts vorging',
  lastPlayed:
    '.input {$minutes :integer} .match $minutes one {{Zuletzt gespielt: {$when}; {$minutes} Minute in den letzten sieben Tagen.}} * {{Zuletzt gespielt: {$when}; {$minutes} Minuten in den letzten sieben Tagen.}}',
  bringIn: 'Aufnahme oder Übungsheft hinzufügen',
  bringInHint:
    'Die Datei wählen oder hierher ziehen: eine Aufnahme jeder Art, MIDI von einem E-Drumset oder was die Übungsseite gesichert hat.',
  level: 'Wie streng Berichte beurteilt werden',
  setUp: 'Wie das Schlagzeug steht',
  setUpAsWritten: 'Wie in jeder Lektion',
  setUps: SET_UP_NAMES,
  whichExercise: 'Das ist der Bericht einer Aufnahme. Was wurde gespielt?',
  takeIn: 'Hinzufügen',
  tookIn:
    '.input {$n :integer} .match $n one {{Hinzugefügt: {$n} Eintrag. Was schon da war, zählt einmal.}} * {{Hinzugefügt: {$n} Einträge. Was schon da war, zählt einmal.}}',
  partly:
    '.input {$n :integer} .match $n one {{{$file}: {$n} Eintrag ist hereingeholt; die anderen sind nicht lesbar. Der erste:}} * {{{$file}: {$n} Einträge sind hereingeholt; die anderen sind nicht lesbar. Der erste:}}',
  setAside:
    '.input {$n :integer} .match $n one {{{$n} Eintrag, der hereingeholt wurde, ist hier nicht lesbar. Er liegt beiseite, wie er ist, und zählt nicht; vielleicht liest ihn ein neueres Shedbook.}} * {{{$n} Einträge, die hereingeholt wurden, sind hier nicht lesbar. Sie liegen beiseite, wie sie sind, und zählen nicht; vielleicht liest sie ein neueres Shedbook.}}',
  saveAside: 'Als Datei sichern',
  reading: 'Das Übungsheft wird gelesen …',
  tooMuch: '{$file} ließ sich nicht in der Zeit lesen, die so eine Datei braucht; ist sie beschädigt?',
  unreadable: '{$file} ist weder ein Übungsheft noch eine Aufnahme.',
  slips: 'Wackelt',
  learning: 'Auf dem Weg',
  holds: 'Sitzt',
  more: 'und {$n :integer} weitere',
  clean: 'sauber bei {$bpm :number}, Ziel {$goal :number}',
  byLimb: 'Jede Hand, jeder Fuß',
  cleanLoops:
    '.input {$loops :integer} .match $loops one {{nichts falsch in {$clean :integer} von {$loops} Durchgang}} * {{nichts falsch in {$clean :integer} von {$loops} Durchgängen}}',
  mostly: {
    missed: 'sonst meist fehlende Schläge',
    extra: 'sonst meist überzählige Schläge',
    early: 'sonst meist zu früh',
    late: 'sonst meist zu spät',
    loud: 'sonst meist zu laut',
    quiet: 'sonst meist zu leise',
    slow: 'sonst meist zu langsam',
    fast: 'sonst meist zu schnell',
  },
  set: 'Hausaufgaben',
  nothingSet: 'Nichts ist aufgegeben.',
  setThis: 'Diese Übung aufgeben',
  note: 'Hinweis zum Üben',
  pinned: 'Bleibt, bis ich sie herausnehme',
  takeOut: 'Herausnehmen: {$name}',
  gone: 'nicht mehr in den Lektionen',
  makeLesson: 'Daraus eine eigene Lektion machen',
  lessonFor: '{$title}, für {$name}',
  packFor: 'Paket zum Mitnehmen für {$name}: {$lesson}',
  lesson: 'Lektion',
  exercise: 'Übung',
  plan: '.input {$minutes :integer} .match $minutes one {{Die nächste Minute Üben}} * {{Die nächsten {$minutes} Minuten Üben}}',
  minutes: '{$n :integer} Min.',
  from: 'von {$bpm :number} in Richtung {$goal :number}',
  broughtIn: 'Was hereingeholt wurde',
  broughtInAt: '.input {$n :integer} .match $n one {{{$when}: {$n} Eintrag}} * {{{$when}: {$n} Einträge}}',
  climbed: 'Runde für Runde',
  climbedOn: '{$exercise} ({$when})',
  climbedRound: 'Runde {$n :integer} bei {$bpm :integer}: {$verdict}',
  roundVerdicts: {
    clean: 'sauber',
    loose: 'fast so weit',
    stumble: 'noch nicht',
    unheard: 'nicht beurteilt',
  },
  takeOutLog: 'Wieder herausnehmen, was {$when} hereinkam',
  tookOut:
    '.input {$n :integer} .match $n one {{{$n} Eintrag herausgenommen.}} * {{{$n} Einträge herausgenommen.}}',
  added: '{$name} steht auf der Liste.',
  changed: 'Geändert: {$name}.',
  pass: 'Bestanden bei {$bpm :number}',
  passThis: 'Bestanden bei {$bpm :number}: {$name}',
  passed: 'Bestanden. Das steht über allem, was gehört wurde, und kommt beim Schüler an.',
  lessonsMade: '.input {$n :integer} .match $n one {{{$n} Lektion gemacht.}} * {{{$n} Lektionen gemacht.}}',
});

/** Words of `inbox`. */
export const inbox = translation<typeof english.inbox>()({
  title: 'Zuerst anhören',
  takes: 'Geschickte Aufnahmen',
  of: '.input {$rounds :integer} .match $rounds 0 {{{$lesson}, {$what}}} one {{{$lesson}, {$what}: {$clean :integer} von {$rounds} Runde sauber}} * {{{$lesson}, {$what}: {$clean :integer} von {$rounds} Runden sauber}}',
  exercise: 'Übung {$n :exercise}',
  groove: 'der Groove allein',
  sent: 'geschickt am {$when}',
  asks: 'möchte deine Meinung hören',
  away: '.input {$days :integer} .match $days one {{seit {$days} Tag nicht gespielt}} * {{seit {$days} Tagen nicht gespielt}}',
  hear: 'Anhören',
  soundOf: 'Aufnahme: {$what}',
  noReport: 'Zu dieser Aufnahme gibt es keinen Bericht; höre sie an.',
  noLesson: 'Die Lektion ist nicht mehr auf dem Pult, darum gibt es keinen Bericht; höre die Aufnahme an.',
  answer: 'Eine Zeile zurück',
  send: 'Die Zeile schicken',
  isHeard: 'Ich habe sie angehört',
  heard: 'Als angehört vermerkt.',
  answered: 'Die Zeile ist beim nächsten Besuch da.',
  said: 'Du hast geschrieben: {$answer}',
});

/** Words of `receipt`. */
export const receipt = translation<typeof english.receipt>()({
  file: 'geloescht',
  when: 'Endgültig gelöscht am {$when}:',
  rows: '.input {$n :integer} .match $n one {{{$n} Eintrag im Übungsheft,}} * {{{$n} Einträge im Übungsheft,}}',
  assignments: '.input {$n :integer} .match $n one {{{$n} gestellte Übung,}} * {{{$n} gestellte Übungen,}}',
  takes:
    '.input {$n :integer} .input {$megabytes :integer} .match $n one {{{$n} Aufnahme ({$megabytes} MB),}} * {{{$n} Aufnahmen ({$megabytes} MB),}}',
  voices: '.input {$n :integer} .match $n one {{{$n} gesprochene Notiz,}} * {{{$n} gesprochene Notizen,}}',
  hours:
    '.input {$n :integer} .match $n one {{{$n} Stunde im Unterrichtsheft,}} * {{{$n} Stunden im Unterrichtsheft,}}',
  links:
    '.input {$n :integer} .match $n one {{{$n} privater Link, der nichts mehr öffnet.}} * {{{$n} private Links, die nichts mehr öffnen.}}',
  copies:
    'Es ist auf diesem Laufwerk überschrieben, mit den Kopien, die es davon gab. Eine Sicherung, die anderswo liegt, hat es noch; hier eingespielt bleibt es gelöscht.',
  only: 'Das steht sonst nirgends: sichern, wenn es jemand sehen soll. Nur die gesicherte Datei hat den Namen.',
  save: 'Als Textdatei sichern',
});

/** Words of `answer`. */
export const answer = translation<typeof english.answer>()({
  bar: 'Takt',
  onBar: 'Worte zu diesem Takt',
  pin: 'An den Takt heften',
  mark: 'Takt {$bar :integer}: {$text}',
  takeOutMark: 'Wegnehmen: Takt {$bar :integer}, {$text}',
  note: 'Die gesprochene Notiz',
  noteOn: 'Worum es darin geht',
  wholeTake: 'alles',
  noteBar: 'Zu Takt {$bar :integer}',
  noteAll: 'Zu allem',
  speak: 'Eine Notiz sprechen',
  speakMore: 'Noch eine Notiz sprechen',
  speaking: 'Jetzt sprechen; höchstens zwei Minuten.',
  enough: 'Das war es',
  making: 'Wird vorbereitet …',
  sendNote: 'Die Notiz senden',
  sendInstead: 'Statt der vorigen senden',
  dropNote: 'Verwerfen',
  hearNote: 'Die eigene Notiz hören',
  hearThe: 'Die eigene Notiz hören: {$about}',
  theNote: 'Die eigene Notiz: {$about}',
  takeBackNote: 'Die Notiz zurücknehmen',
  takeBackThe: 'Die Notiz zurücknehmen: {$about}',
  noteSent: 'Die Notiz ist beim nächsten Besuch da.',
  noteGone: 'Die Notiz ist zurückgenommen.',
  noMicrophone: 'Es war kein Mikrofon zu hören. Es für diese Seite erlauben und noch einmal versuchen.',
});

/** Words of `beside`. */
export const beside = translation<typeof english.beside>()({
  page: 'Die Noten von Übung {$n :exercise}, mit jedem Schlag, wo er fiel',
  groove: 'Der Groove',
  legend:
    'Über den Notenköpfen: wo jeder Schlag fiel, zu früh nach links, zu spät nach rechts, viermal so weit wie gespielt. Ein gestrichelter Ring: Er kam nicht.',
  play: 'Mit den Noten abspielen',
  stop: 'Stopp',
  round: 'Welcher Durchgang',
  roundAt: 'Durchgang {$n :integer}, {$bpm :number} bpm',
  side: 'Was zu hören ist',
  sides: { take: 'Die Aufnahme', model: 'Das Vorbild', both: 'Beides' },
  speed: 'Wie schnell',
  percent: '{$n :integer} %',
  preparing: 'Wird vorbereitet …',
  broken: 'Diese Aufnahme lässt sich nicht abspielen.',
});

/** Words of `diary`. */
export const diary = translation<typeof english.diary>()({
  title: 'Tagebuch',
  day: '.input {$minutes :integer} .match $minutes 0 {{{$day}}} one {{{$day}: {$minutes} Minute}} * {{{$day}: {$minutes} Minuten}}',
  ear: '.input {$rounds :integer} .match $rounds one {{{$exercise}: {$clean :integer} von {$rounds} Durchgang sauber gehört, bis {$bpm :number}.}} * {{{$exercise}: {$clean :integer} von {$rounds} Durchgängen sauber gehört, bis {$bpm :number}.}}',
  student:
    '.input {$rounds :integer} .match $rounds one {{{$exercise}: {$clean :integer} von {$rounds} Durchgang nach eigener Angabe sauber, bis {$bpm :number}.}} * {{{$exercise}: {$clean :integer} von {$rounds} Durchgängen nach eigener Angabe sauber, bis {$bpm :number}.}}',
  teacher:
    '.input {$rounds :integer} .input {$clean :integer} {{{$exercise}: bestanden bei {$bpm :number}, sagst du.}}',
  played: '{$exercise}: gespielt, nicht beurteilt.',
  sent: 'Geschickt: {$what}.',
  earlier: '.input {$n :integer} .match $n one {{{$n} früherer Tag}} * {{{$n} frühere Tage}}',
});

/** Words of `consent`. */
export const consent = translation<typeof english.consent>()({
  title: 'Zustimmung zu Aufnahmen',
  isMinor: 'Sorgeberechtigte entscheiden über Aufnahmen',
  missing:
    'Noch hat niemand zugestimmt: Die Übungsseite öffnet für {$name} kein Mikrofon, und keine Aufnahme wird angenommen.',
  by: 'Wer zugestimmt hat',
  note: 'Zustimmung vermerken',
  given: '{$by} hat zugestimmt; vermerkt am {$day}.',
  withdraw: 'Die Zustimmung ist zurückgezogen',
  noted: 'Vermerkt. Die Übungsseite weiß es beim nächsten Besuch.',
  withdrawn: 'Zurückgezogen. Was vorher geschickt wurde, ist noch da: löschen, wo das gewünscht ist.',
});

/** Words of `safe`. */
export const safe = translation<typeof english.safe>()({
  title: 'Sicher aufbewahren',
  lead: 'Alles in einer Datei: Lektionen, Namen, Übungshefte und Aufnahmen. Dort aufbewahren, wo sonst niemand sie lesen kann. „shedbook restore“ holt sie zurück.',
  backUp: 'Alles sichern',
  tableOf: 'Übungsheft von {$name} als Tabelle',
  everything: 'Alles außer dem Ton als JSON',
  tableOfAll: 'Alle Übungshefte als Tabelle',
});

/** Words of what is shown only once, to be copied. */
export const shownOnce = {
  copy: 'Adresse kopieren',
  copied: 'Die Adresse ist kopiert.',
  notCopied: 'Die Adresse ließ sich nicht kopieren: markieren und von Hand kopieren.',
} as const;

/** Words of `links`. */
export const links = translation<typeof english.links>()({
  title: 'Private Links',
  lead: 'Ein privater Link öffnet auf dem eigenen Gerät, was {$name} aufgegeben ist, aus allen Lektionen und in der Reihenfolge. Was geübt wird, kommt von selbst zurück. Wer den Link hat, kann ihn öffnen.',
  make: 'Privaten Link für {$name} machen',
  of: 'Privater Link für {$name}',
  once: 'Er wird nur jetzt gezeigt: schicken oder scannen lassen. Ist er verloren, einen neuen machen und diesen zurücknehmen.',
  code: 'Der private Link für {$name} als Code zum Scannen',
  address: 'Adresse des privaten Links',
  made: 'Vom {$day};',
  unused: 'noch nicht geöffnet',
  used: 'zuletzt geöffnet am {$day}',
  revoke: 'Zurücknehmen',
  revokeThis: 'Link {$n :integer} zurücknehmen',
  revoked: 'Der Link ist zurückgenommen. Was auf dem Gerät liegt, behält {$name}.',
});

/** Words of `signIn`. */
export const signIn = translation<typeof english.signIn>()({
  out: 'Abmelden',
});
