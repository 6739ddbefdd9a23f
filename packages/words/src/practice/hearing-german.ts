/** The words of hearing oneself, takes, plan, log and care, in German. */
import type { PlanKind } from '@shedbook/coach';
import { voices } from '../desk/german.ts';
import type { HearingWords, SaidReason } from './hearing-english.ts';

function count(n: number, one: string, many: string): string {
  return n === 1 ? `${n} ${one}` : `${n} ${many}`;
}

function number(n: number, digits = 1): string {
  return n.toFixed(digits).replace('.', ',');
}

function reason({ kind, amount, who, where, lead }: SaidReason): string {
  const n = Math.round(amount);
  const place = where === null ? 'durchweg' : `auf ${where}`;
  if (who === null) return `Etwa ${n} Prozent ${kind === 'slow' ? 'langsamer' : 'schneller'} als verlangt.`;
  if (kind === 'missed') return `${who}: fehlt ${place}.`;
  if (kind === 'extra') return `${who}: ein Schlag zu viel${where === null ? '' : ` bei ${where}`}.`;
  if (kind === 'loud') return `${who}: etwa ${n} dB zu laut neben ${lead}.`;
  if (kind === 'quiet') return `${who}: etwa ${n} dB zu leise neben ${lead}.`;
  return `${who}: etwa ${n} ms zu ${kind === 'late' ? 'spät' : 'früh'} ${place}.`;
}

function megabytes(bytes: number): string {
  return bytes < 1e9 ? `${number(bytes / 1e6)} MB` : `${number(bytes / 1e9)} GB`;
}

const REASONS: Readonly<Record<PlanKind, string>> = {
  'warm-up':
    'Erst aufwärmen: leise, locker, langsamer als du könntest. Setz dich so, dass nichts sich strecken muss.',
  assigned: 'Von deiner Lehrkraft aufgegeben.',
  new: 'Neu: solange die Hände frisch sind.',
  review: 'Wieder dran.',
  'once more': 'Noch einmal, nach etwas anderem: was ist noch da?',
  time: 'Nur der Groove: laufen lassen und auf die Balance hören.',
  break: 'Stöcke weg, aufstehen, Hände und Ohren ausruhen.',
};

/** The words. */
export const hearingGerman: HearingWords = {
  voices,
  limbs: {
    'right hand': 'Rechte Hand',
    'left hand': 'Linke Hand',
    'right foot': 'Rechter Fuß',
    'left foot': 'Linker Fuß',
  },
  who: (limb, voice) => `${limb} (${voice})`,
  place: (syllable, beat, bar) =>
    `${syllable === null ? beat : `dem „${syllable}“ der ${beat}`}${bar === null ? '' : ` in Takt ${bar}`}`,
  reason,
  close: 'Fertig',
  hearing: {
    title: 'Dich selbst hören',
    lead: 'Spiel mit, und jeder Schlag erscheint, wo er fiel: links von seiner Note, wenn er früh war, rechts, wenn er spät war. Nach jeder Runde steht da, worauf du achten kannst.',
    privacy:
      'Was gehört wird, bleibt auf diesem Gerät. Für das Mikrofon fragt der Browser, ob diese Seite es benutzen darf.',
    headphones: 'Nimm Kopfhörer für die Aufnahme: ein Lautsprecher würde mitgehört.',
    microphone: 'Mikrofon benutzen',
    kit: 'Elektronisches Schlagzeug benutzen',
    stop: 'Nicht mehr zuhören',
    opening: { microphone: 'Warte auf das Mikrofon …', kit: 'Suche ein Schlagzeug …' },
    on: { microphone: 'Das Mikrofon hört zu.', kit: 'Das elektronische Schlagzeug wird gehört.' },
    refusals: {
      microphone: {
        denied:
          'Der Browser durfte das Mikrofon nicht benutzen. Erlaube es in den Einstellungen dieser Seite und versuch es noch einmal.',
        missing: 'Es wurde kein Mikrofon gefunden. Schließ eines an und versuch es noch einmal.',
        busy: 'Das Mikrofon ließ sich nicht öffnen; vielleicht benutzt es ein anderes Programm.',
        'not here': 'Dieser Browser gibt dieser Seite kein Mikrofon. Eine Adresse mit https hilft.',
        none: 'Es wurde kein Mikrofon gefunden. Schließ eines an und versuch es noch einmal.',
      },
      kit: {
        denied:
          'Der Browser durfte MIDI nicht benutzen. Erlaube es in den Einstellungen dieser Seite und versuch es noch einmal.',
        missing:
          'Es wurde kein Schlagzeug gefunden. Schließ es an, schalte es ein und versuch es noch einmal.',
        busy: 'Das Schlagzeug ließ sich nicht öffnen; vielleicht benutzt es ein anderes Programm.',
        'not here': 'Dieser Browser kennt kein MIDI. Ein anderer vielleicht, oder nimm das Mikrofon.',
        none: 'Es wurde kein Schlagzeug gefunden. Schließ es an, schalte es ein und versuch es noch einmal.',
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
    legend: (times) =>
      `${times}-mal so früh oder spät gezeichnet, wie es war. Ein Ring ist ein Schlag, der nicht gehört wurde, ein Plus einer zu viel.`,
    level: 'Wie streng',
    strictness: { beginner: 'Erste Schritte', intermediate: 'Im Werden', advanced: 'Fließend' },
    handsFree: 'Von selbst weitergehen',
    handsFreeHint: (loops) =>
      `Nach ${count(loops, 'sauberen Runde', 'sauberen Runden')} kommt die nächste Übung.`,
    loops: 'Saubere Runden bis zur nächsten Übung',
    list: (numbers) => `Liste von heute: ${numbers}`,
    bySheet: 'In der Reihenfolge des Blatts',
    stay: 'Hier bleiben',
    goOn: 'Wieder weitergehen',
    said: {
      next: (n) => `Als Nächstes: Übung ${n}.`,
      staying: 'Wir bleiben, bis du weitergehen willst.',
      held: 'Sitzt. Wir bleiben, wie du wolltest.',
      'going on': 'Es geht weiter, wenn diese Übung sitzt.',
      more: (n) =>
        n === 1
          ? 'Noch eine saubere Runde, dann die nächste Übung.'
          : `Noch ${n} saubere Runden, dann die nächste Übung.`,
      'all done': 'Das war die letzte Übung.',
    },
  },
  after: {
    title: 'Nach der Runde',
    verdicts: {
      clean: 'Sauber.',
      loose: 'Das Muster hielt, einige Schläge lagen daneben.',
      stumble: 'Das Muster ist auseinandergefallen.',
      unheard: 'Es war zu wenig zu hören, um etwas zu sagen.',
    },
    recording:
      'Das Mikrofon hat die Aufnahme selbst gehört. Nimm Kopfhörer, oder wähle unter „Mehr“, was du spielst, damit es verstummt.',
    short: { clean: 'sauber', loose: 'locker', stumble: 'auseinandergefallen', unheard: 'nicht gehört' },
    round: (n, bpm, verdict) => `Runde ${n} bei ${bpm}: ${verdict}`,
    rounds: 'Die letzten Runden',
    nothing: 'Die erste Runde ist noch nicht zu Ende gespielt.',
  },
  latency: {
    title: 'Zeitprüfung',
    known: (ms) => `Der Klang braucht hin und zurück ${ms} ms; das wird abgezogen.`,
    guessed: 'Noch nicht geprüft: früh und spät stimmen nur ungefähr.',
    check: 'Zeit prüfen',
    again: 'Noch einmal prüfen',
    leadMicrophone:
      'Zehn Klicks erklingen, und das Mikrofon horcht danach. Leg die Kopfhörer auf das Mikrofon oder stell den Lautsprecher lauter, und sei still.',
    leadKit: 'Sechzehn Klicks erklingen. Spiel sie auf einem Pad mit, so genau du kannst.',
    start: 'Prüfung beginnen',
    running: 'Prüfe …',
    result: (ms, spread, heard, played) =>
      `${ms} ms hin und zurück, auf ${spread} ms genau; ${heard} von ${played} Klicks gehört.`,
    failed: 'Zu wenige Klicks gehört. Mach sie lauter oder den Raum leiser und versuch es noch einmal.',
    hand: 'Oder von Hand, in Millisekunden',
    keep: 'Behalten',
    kept: 'Für diese Geräte gemerkt.',
  },
  takes: {
    title: 'Aufnahmen',
    lead: 'Aufnahmen bleiben auf diesem Gerät, bis du sie löschst oder verschickst.',
    keepAll: 'Jede Aufnahme behalten',
    keep: 'Diese Aufnahme behalten',
    kept: 'Die Aufnahme ist gespeichert.',
    full: 'Auf diesem Gerät ist kein Platz mehr. Lösch erst einige Aufnahmen.',
    empty: 'Noch keine Aufnahmen.',
    exercise: (n) => (n === null ? 'Nur Groove' : `Übung ${n}`),
    about: (when, bpm, seconds) => `${when}, ${bpm} bpm, ${seconds} s`,
    rounds: (clean, all) => `${clean} von ${count(all, 'Runde', 'Runden')} sauber`,
    unheard: 'nicht beurteilt',
    report: 'Der ganze Bericht',
    reportOf: (title) => `Bericht über ${title}`,
    listen: 'Anhören',
    preparing: 'Wird vorbereitet …',
    play: 'Abspielen',
    stop: 'Anhalten',
    side: 'Was du hörst',
    sides: { take: 'Dich', model: 'Das Vorbild', both: 'Beides' },
    other: 'Die Lektion hat sich geändert; für diese Aufnahme gibt es kein Vorbild mehr.',
    export: 'Für deine Lehrkraft sichern',
    remove: 'Löschen',
    removed: 'Die Aufnahme wurde gelöscht.',
    undo: 'Zurückholen',
    space: (used, left) =>
      left === null
        ? `Aufnahmen brauchen ${megabytes(used)}.`
        : `Aufnahmen brauchen ${megabytes(used)}; ${megabytes(left)} sind frei.`,
    broken: 'Diese Aufnahme ließ sich nicht abspielen.',
  },
  plan: {
    title: 'Heute',
    minutes: 'Minuten, die ich habe',
    minutesOf: (n) => count(n, 'Minute', 'Minuten'),
    short: (n) => `${n} min`,
    open: (what) => `${what} üben`,
    exercise: (n, name) => `Übung ${n}${name === null ? '' : ` (${name})`}`,
    groove: 'Nur Groove',
    rest: 'Pause',
    tempo: (from, goal) => (from === goal ? `${from} bpm` : `${from} bis ${goal} bpm`),
    reason: (kind) => REASONS[kind],
    note: (kind) =>
      kind === 'enough'
        ? 'Das reicht für heute; die übrige Zeit gehört dir.'
        : 'Anderes wartet; nichts geht verloren.',
    takeUp: 'Diese Liste üben, Hände frei',
  },
  log: {
    title: 'Was du gespielt hast',
    lead: 'Nach Übung und Tempo. Es bleibt auf diesem Gerät, auch wenn das Blatt erneuert wird.',
    empty: 'Noch nichts.',
    exercise: 'Übung',
    time: 'Gespielte Zeit',
    clean: 'Sauber bis',
    last: 'Zuletzt gespielt',
    never: 'noch nicht',
    export: 'Übungsbuch sichern',
    import: 'Übungsbuch einlesen',
    imported: (n) =>
      n === 0 ? 'In dieser Datei ist nichts Neues.' : `${count(n, 'Eintrag kam', 'Einträge kamen')} dazu.`,
    refused: (file) => `${file} wurde nicht gelesen:`,
    problem: (line, column, found, expected) =>
      `Zeile ${line}, Spalte ${column}: gefunden ${found}; erwartet ${expected}.`,
    more: (n) => `… und ${count(n, 'weiterer Fehler', 'weitere Fehler')}.`,
  },
  care: {
    title: 'Ohren und Körper',
    first: 'Örtliche Regeln und der Rat einer zugelassenen Fachperson gehen allem hier vor.',
    protect:
      'Schlagzeug ist laut. Trag Gehörschutz, der passt, und stell die Aufnahme nicht lauter als nötig.',
    ringing:
      'Wenn nach dem Spielen die Ohren klingeln oder alles dumpf klingt, hör für heute auf und gönn ihnen Ruhe.',
    warmUp: 'Fang langsam und leise an, und sitz so, dass nichts sich strecken muss.',
    pain: 'Hör auf, wenn etwas weh tut. Spiel nicht durch den Schmerz; bleibt er oder kommt er wieder, geh zu einer zugelassenen Fachperson.',
    rest: 'Zeit für eine Pause: Stöcke weg, aufstehen, Hände und Ohren ausruhen.',
    later: 'Später',
    exposure: 'Wie lange bei diesem Pegel',
    level: 'Pegel am Ohr',
    db: (db) => `${db} dBA`,
    meter:
      'Miss ihn mit einem Schallpegelmesser, wo deine Ohren sind; ein ganzes Schlagzeug hat oft 95 bis 110 dBA.',
    whose: 'Wessen Ohren',
    listeners: { adult: 'erwachsen', child: 'Kind oder empfindliche Ohren' },
    left: (db, time, week) =>
      `Bei ${db} dBA bleiben ${week ? 'diese Woche' : 'heute'} etwa ${time}, Gehörschutz nicht eingerechnet.`,
    usedUp: (db) => `Bei ${db} dBA ist die empfohlene Zeit verbraucht; spiel auf einem Pad oder ohne Klang.`,
    source:
      'Nach NIOSH 98-126 für einen Tag und WHO-ITU H.870 für eine Woche. Auskunft, kein ärztlicher Rat.',
  },
};
