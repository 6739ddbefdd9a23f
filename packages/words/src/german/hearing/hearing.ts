/** Hearing oneself, in German. */
import type * as english from '../../english/hearing/hearing.ts';
import { translation } from '../../message/translated.ts';
import { LEVEL_NAMES } from '../levels.ts';

/** Its single texts. */
export const page = translation<typeof english.page>()({
  close: 'Fertig',
});

/** Words of `hearing`. */
export const hearing = translation<typeof english.hearing>()({
  title: 'Dich selbst hören',
  lead: 'Spiel mit, und jeder Schlag erscheint, wo er fiel: links von seiner Note, wenn er früh war, rechts, wenn er spät war. Nach jeder Runde steht da, worauf du achten kannst.',
  privacy:
    'Was gehört wird, bleibt auf diesem Gerät. Für das Mikrofon fragt der Browser, ob diese Seite es benutzen darf.',
  headphones: 'Nimm Kopfhörer für die Aufnahme: ein Lautsprecher würde mitgehört.',
  microphone: 'Mikrofon benutzen',
  kit: 'Elektronisches Schlagzeug benutzen',
  lineCheck: 'Dein Schlagzeug vorstellen',
  oldLineCheck:
    'Der Linecheck „{$name}“ stammt von einem früheren Stand des Ohrs und wird nicht verwendet. Stell dein Schlagzeug noch einmal vor.',
  stop: 'Nicht mehr zuhören',
  cautions: {
    changed:
      'Dieses Gerät verändert, was sein Mikrofon hört, wie für ein Telefongespräch: Aufnahmen können pumpen oder Becken verlieren. Ein angestecktes Mikrofon oder ein anderer Browser lässt den Klang vielleicht, wie er ist.',
    'two devices':
      'Du hörst über ein Gerät und wirst über ein anderes gehört. Prüf die Zeit einmal mit beiden zusammen.',
  },
  opening: {
    microphone: 'Warte auf das Mikrofon …',
    kit: 'Suche ein Schlagzeug …',
  },
  on: {
    microphone: 'Das Mikrofon hört zu.',
    kit: 'Das elektronische Schlagzeug wird gehört.',
  },
  refusals: {
    microphone: {
      denied:
        'Der Browser durfte das Mikrofon nicht benutzen. Erlaube es in den Einstellungen dieser Seite und versuch es noch einmal.',
      missing: 'Es wurde kein Mikrofon gefunden. Schließ eines an und versuch es noch einmal.',
      busy: 'Das Mikrofon ließ sich nicht öffnen; vielleicht benutzt es ein anderes Programm.',
      'no consent':
        'Hier wird noch nichts aufgenommen: Erst müssen deine Eltern oder andere Sorgeberechtigte zustimmen. Bitte sie, es deiner Lehrkraft zu sagen.',
      'not here': 'Dieser Browser gibt dieser Seite kein Mikrofon. Eine Adresse mit https hilft.',
      none: 'Es wurde kein Mikrofon gefunden. Schließ eines an und versuch es noch einmal.',
      broken:
        'Das Zuhören ist abgebrochen. Schalte es noch einmal ein; bricht es wieder ab, öffne die Seite neu.',
    },
    kit: {
      'no consent': 'Hier wird noch nichts aufgenommen.',
      denied:
        'Der Browser durfte MIDI nicht benutzen. Erlaube es in den Einstellungen dieser Seite und versuch es noch einmal.',
      missing: 'Es wurde kein Schlagzeug gefunden. Schließ es an, schalte es ein und versuch es noch einmal.',
      busy: 'Das Schlagzeug ließ sich nicht öffnen; vielleicht benutzt es ein anderes Programm.',
      'not here': 'Dieser Browser kennt kein MIDI. Ein anderer vielleicht, oder nimm das Mikrofon.',
      none: 'Es wurde kein Schlagzeug gefunden. Schließ es an, schalte es ein und versuch es noch einmal.',
      broken:
        'Das Zuhören ist abgebrochen. Schalte es noch einmal ein; bricht es wieder ab, öffne die Seite neu.',
    },
  },
  goesOn: 'Alles andere geht auch ohne.',
  levels: {
    silent: 'Noch ist nichts zu hören.',
    soft: 'Sehr leise: stell das Gerät näher.',
    good: 'Gut zu hören.',
    loud: 'Zu laut: stell das Gerät weiter weg.',
  },
  waiting: 'Drück auf Abspielen; gehört wird ab dem ersten Takt.',
  picture: 'Was gehört wurde',
  legend:
    '{$times :integer}-mal so früh oder spät gezeichnet, wie es war. Ein Ring ist ein Schlag, der nicht gehört wurde, ein Plus einer zu viel. Was gepunktet ist oder ein Fragezeichen hat, ist nicht sicher. Ist ein Takt vorbei, wird seine Zeichnung berichtigt.',
  level: 'Wie streng',
  strictness: LEVEL_NAMES,
  handsFree: 'Von selbst weitergehen',
  handsFreeHint:
    '.input {$loops :integer} .match $loops one {{Nach {$loops} sauberen Runde kommt die nächste Übung.}} * {{Nach {$loops} sauberen Runden kommt die nächste Übung.}}',
  loops: 'Saubere Runden bis zur nächsten Übung',
  stay: 'Hier bleiben',
  goOn: 'Wieder weitergehen',
  said: {
    next: 'Als Nächstes: Übung {$n :exercise}.',
    staying: 'Wir bleiben, bis du weitergehen willst.',
    held: 'Sitzt. Wir bleiben, wie du wolltest.',
    'going on': 'Es geht weiter, wenn diese Übung sitzt.',
    more: '.input {$n :integer} .match $n one {{Noch eine saubere Runde, dann die nächste Übung.}} * {{Noch {$n} saubere Runden, dann die nächste Übung.}}',
    'all done': 'Das war die letzte Übung.',
  },
});

/** Words of `after`. */
export const after = translation<typeof english.after>()({
  title: 'Nach der Runde',
  verdicts: {
    clean: 'Sauber.',
    nearly: 'Fast.',
    'not yet': 'Noch nicht.',
    'not judged': 'Nicht beurteilt.',
  },
  figures: 'Die Zahlen',
  ask: 'Wie war es?',
  short: {
    clean: 'sauber',
    nearly: 'fast',
    'not yet': 'noch nicht',
    'not judged': 'nicht beurteilt',
  },
  round: 'Runde {$n :integer} bei {$bpm :number}: {$verdict}',
  rounds: 'Die letzten Runden',
  nothing: 'Die erste Runde ist noch nicht zu Ende gespielt.',
});

/** Words of `latency`. */
export const latency = translation<typeof english.latency>()({
  title: 'Zeitprüfung',
  known: 'Der Klang braucht hin und zurück {$ms :number} ms; das wird abgezogen.',
  guessed: 'Noch nicht geprüft: früh und spät stimmen nur ungefähr.',
  fromPlaying:
    'Nicht geprüft, aber aus deinen ersten Runden gefunden: etwa {$ms :number} ms, abgezogen. Als Ganzes zu früh oder zu spät ist kein Fehler.',
  check: 'Zeit prüfen',
  again: 'Noch einmal prüfen',
  leadMicrophone:
    'Zehn Klicks erklingen, und das Mikrofon horcht danach. Leg die Kopfhörer auf das Mikrofon oder stell den Lautsprecher lauter, und sei still.',
  leadKit: 'Sechzehn Klicks erklingen. Spiel sie auf einem Pad mit, so genau du kannst.',
  start: 'Prüfung beginnen',
  running: 'Prüfe …',
  result:
    '{$ms :number} ms hin und zurück, auf {$spread :number} ms genau; {$heard :integer} von {$played :integer} Klicks gehört.',
  failed: 'Zu wenige Klicks gehört. Mach sie lauter oder den Raum leiser und versuch es noch einmal.',
  hand: 'Oder von Hand, in Millisekunden',
  keep: 'Behalten',
  kept: 'Für diese Geräte gemerkt.',
});

/** Words of `pad`. */
export const pad = translation<typeof english.pad>()({
  title: 'Das Pad einrichten',
  surface: 'Ich spiele auf',
  surfaces: {
    kit: 'Schlagzeug',
    pad: 'Pad oder Tisch',
  },
  lead: 'Spiel den Rhythmus der Übung auf einer Fläche; die Seite spielt den Rest. Jeder kurze Schlag zählt. Setz Kopfhörer auf, damit nur du gehört wirst.',
  clapLead:
    'Klatsch, und zähl laut dazu, wenn du magst. Jedes kurze Klatschen oder Tippen zählt. Setz Kopfhörer auf, damit nur du gehört wirst.',
  midi: 'MIDI-Pad benutzen: jede Taste',
  steps: {
    place:
      'Leg das Gerät auf denselben Tisch, eine Hand breit neben die Stelle, wo du schlägst, das Mikrofon zu dir.',
    loud: 'Schlag viermal so laut, wie du spielen wirst, mit einer kleinen Pause dazwischen.',
    timing: 'Jetzt die Zeit: Leg die Kopfhörer auf das Mikrofon und sei still, solange zehn Klicks klingen.',
    ready: 'Fertig. Kopfhörer auf, und abspielen.',
  },
  taps: '{$n :integer} von {$of :integer} gut gehört',
  tooLoud: 'Das war zu laut: Rück das Gerät etwas weg.',
  checking: 'Die Klicks werden gehört …',
  notHeard:
    'Zu wenige Klicks wurden gehört. Mach sie lauter und versuch es noch einmal, oder mach ohne weiter.',
  lies: 'Es liegt',
  click: 'Klicks abspielen',
  skip: 'Ohne weiter',
});
