/** The plan of today and what was played, in German. */
import type * as english from '../../english/hearing/plan.ts';
import { translation } from '../../message/translated.ts';

/** Words of `plan`. */
export const plan = translation<typeof english.plan>()({
  title: 'Heute',
  minutes: 'Minuten, die ich habe',
  lessons: 'Aus diesen Lektionen',
  minutesOf: '.input {$n :integer} .match $n one {{{$n} Minute}} * {{{$n} Minuten}}',
  short: '{$n :integer} min',
  open: '{$what} üben',
  exercise: 'Übung {$n :exercise}',
  named: 'Übung {$n :exercise} ({$name})',
  groove: 'Nur Groove',
  rest: 'Pause',
  tempo: '{$bpm :number} bpm',
  tempi: '{$from :number} bis {$to :number} bpm',
  takeUp: 'Diese Liste üben',
  goOn: 'Mit der Liste weitermachen',
  done: 'fertig',
  allDone: 'Alles auf der Liste von heute ist fertig.',
  free: 'Freies Spiel',
  running: '{$what}: noch {$left}',
  rests: 'Pause: noch {$left}',
  place: '{$n :integer} von {$of :integer} auf der Liste von heute',
  skip: 'Nächstes auf der Liste',
  leave: 'Liste verlassen',
  goal: {
    title: 'Mein eigenes Ziel',
    is: 'Mein Ziel: {$goal}',
    change: 'Mein Ziel ändern',
    what: 'Was ich können will',
    tempo: 'Bei wie vielen bpm',
    hint: 'Das Tempo tritt an die Stelle des Ziels auf dem Blatt. Leer bleibt es bei jenem.',
    keep: 'Mein Ziel behalten',
  },
  parts: {
    slower: 'Das Ganze, langsamer',
    'cell alone': 'Schlag {$beat :integer} allein, auf jedem Schlag',
    'move alone': 'Nur der Weg zu Schlag {$beat :integer}, im Kreis',
    'two limbs': 'Zwei Gliedmaßen: die führende Hand und die Übung',
    sung: 'Singen und laut zählen; Hände und Füße ruhen',
  },
});

/** Words of `log`. */
export const log = translation<typeof english.log>()({
  title: 'Was du gespielt hast',
  lead: 'Nach Übung und Tempo. Es bleibt auf diesem Gerät, auch wenn das Blatt erneuert wird.',
  empty: 'Noch nichts.',
  exercise: 'Übung',
  time: 'Gespielte Zeit',
  heard: 'Sauber gehört bis',
  said: 'Sauber genannt bis',
  last: 'Zuletzt gespielt',
  passed: 'von deiner Lehrkraft bestanden bei {$tempo}',
  never: 'noch nicht',
  export: 'Übungsheft sichern',
  import: 'Übungsheft einlesen',
  imported:
    '.input {$n :integer} .match $n 0 {{In dieser Datei ist nichts Neues.}} one {{{$n} Eintrag kam dazu.}} * {{{$n} Einträge kamen dazu.}}',
  reading: 'Das Protokoll wird gelesen …',
  tooMuch:
    '{$file} ließ sich nicht in der Zeit lesen, die ein Protokoll braucht. Ist die Datei beschädigt oder von anderer Art?',
  refused: '{$file} wurde nicht gelesen:',
  problem: 'Zeile {$line :integer}, Spalte {$column :integer}: gefunden {$found}; erwartet {$expected}.',
  partly:
    '.input {$n :integer} .match $n one {{{$file} hat Einträge, die man nicht lesen kann. {$n} anderer Eintrag kam dazu.}} * {{{$file} hat Einträge, die man nicht lesen kann. {$n} andere Einträge kamen dazu.}}',
  more: '.input {$n :integer} .match $n one {{… und {$n} weiterer Fehler.}} * {{… und {$n} weitere Fehler.}}',
});

/** Words of `history`. */
export const history = translation<typeof english.history>()({
  title: 'Gut aufheben',
  lead: 'Protokoll, Aufnahmen, Linechecks, Zeiten und Einstellungen liegen auf diesem Gerät. Ein Browser kann sie löschen: Sichere sie ab und zu.',
  safe: 'Protokoll, Aufnahmen, Linechecks, Zeiten und Einstellungen liegen auf diesem Gerät, und der Browser hat versprochen, sie zu behalten.',
  save: 'Alles sichern',
  back: 'Gesichertes zurückholen',
  refused: 'Diese Datei wurde nicht hier gesichert.',
  cameBack: 'Dazugekommen: {$entries :integer} Einträge und {$takes :integer} Aufnahmen.',
  again: 'Die Seite damit öffnen',
  unreadable:
    '.input {$n :integer} .match $n one {{{$n} Eintrag des Protokolls ist nicht lesbar. Er ist beiseitegelegt; die anderen sind da.}} * {{{$n} Einträge des Protokolls sind nicht lesbar. Sie sind beiseitegelegt; die anderen sind da.}}',
  look: 'Zum Ansehen sichern',
  takeOut: 'Herausnehmen',
});

/** Words of `progress`. */
export const progress = translation<typeof english.progress>()({
  title: 'Über die Wochen',
  lead: 'Ein Punkt je Woche. Gefüllt: gehört; offen: von dir gesagt. Gleichmäßigkeit ist besser, je höher der Punkt steht.',
  empty: 'Noch nichts. Nach ein paar Runden hat jede Woche hier einen Punkt.',
  tempo: 'Tempo, das hielt: {$what}',
  even: 'Wie gleichmäßig: {$limb}',
  point: '{$value} in der Woche vom {$week}',
  spread: '{$ms :number} ms auseinander',
});

/** Words of `week`. */
export const week = translation<typeof english.week>()({
  ask: 'Ich möchte wissen, was meine Lehrkraft dazu meint',
  sendTake: 'An meine Lehrkraft schicken',
  takeWaits: 'Sie geht zu deiner Lehrkraft, sobald es ein Netz gibt.',
  takeSent: 'An deine Lehrkraft geschickt am {$when}.',
  keptUntil: 'Im Unterricht bleibt sie bis {$day} liegen, dann wird sie dort gelöscht.',
  takeHeard: 'Deine Lehrkraft hat sie angehört.',
  takeRefused: 'Das Pult deiner Lehrkraft hat sie nicht angenommen. Sie bleibt auf diesem Gerät.',
  back: 'Zurücknehmen',
  notBack: 'Das ging jetzt nicht. Versuche es noch einmal, wenn es ein Netz gibt.',
  answer: 'Deine Lehrkraft: {$answer}',
  onBar: 'Takt {$bar :integer}: {$text}',
  spoken: 'Was deine Lehrkraft zu {$what} gesagt hat',
  spokenOn: 'Was deine Lehrkraft zu Takt {$bar :integer} von {$what} gesagt hat',
  spokenBar: 'Takt {$bar :integer}, gesprochen:',
  answers: 'Von deiner Lehrkraft',
  onTake: 'Zu {$what}, {$day}:',
  want: 'Meine Lehrkraft sieht, was ich übe',
  states: {
    sent: '.input {$n :integer} .match $n * {{Bei deiner Lehrkraft ist alles bis jetzt.}}',
    'on its way':
      '.input {$n :integer} .match $n one {{{$n} Eintrag ist unterwegs zu deiner Lehrkraft.}} * {{{$n} Einträge sind unterwegs zu deiner Lehrkraft.}}',
    waits:
      '.input {$n :integer} .match $n one {{{$n} Eintrag wartet auf diesem Gerät, bis es ein Netz gibt.}} * {{{$n} Einträge warten auf diesem Gerät, bis es ein Netz gibt.}}',
    later:
      '.input {$n :integer} .match $n one {{{$n} Eintrag bleibt auf diesem Gerät, denn das Pult nimmt gerade nichts mehr an. Er wird später von selbst gesendet.}} * {{{$n} Einträge bleiben auf diesem Gerät, denn das Pult nimmt gerade nichts mehr an. Sie werden später von selbst gesendet.}}',
    refused:
      '.input {$n :integer} .match $n one {{{$n} Eintrag ließ sich nicht senden: Dein privater Link öffnet nichts mehr. Er bleibt auf diesem Gerät; bitte deine Lehrkraft um einen neuen Link.}} * {{{$n} Einträge ließen sich nicht senden: Dein privater Link öffnet nichts mehr. Sie bleiben auf diesem Gerät; bitte deine Lehrkraft um einen neuen Link.}}',
    off: '.input {$n :integer} .match $n 0 {{Nichts Neues wird gesendet.}} one {{{$n} Eintrag bleibt allein auf diesem Gerät.}} * {{{$n} Einträge bleiben allein auf diesem Gerät.}}',
  },
});
