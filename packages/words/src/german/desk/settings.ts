/** Settings, and what the server refuses, in German. */
import type * as english from '../../english/desk/settings.ts';
import { translation } from '../../message/translated.ts';

/** Words of `settings`. */
export const settings = translation<typeof english.settings>()({
  theme: 'Hell oder dunkel',
  trySound: 'Den Ton dieses Geräts probieren',
  themes: {
    system: 'wie das System',
    light: 'hell',
    dark: 'dunkel',
  },
  language: 'Sprache',
});

/** Words of `refusals`. */
export const refusals = translation<typeof english.refusals>()({
  'no-such-lesson': 'Diese Lektion gibt es nicht mehr.',
  'no-such-step': 'So weit reicht die Geschichte nicht.',
  'no-such-student': 'Diesen Namen gibt es nicht mehr in der Liste.',
  'lesson-changed': 'Die Lektion wurde in einem anderen Fenster geändert.',
  'student-changed': 'Dieser Name wurde in einem anderen Fenster geändert.',
  'bad-request': 'Der Server hat das nicht verstanden.',
  'too-large': 'Das ist zu groß.',
  'foreign-origin': 'Der Server antwortet nur seinen eigenen Seiten.',
  'no-such-film': 'Diesen Film gibt es nicht mehr.',
  'no-ffmpeg':
    'Dem Rechner, auf dem das Pult läuft, fehlt FFmpeg, ein eigenes Programm, das nicht zu Shedbook gehört, und dieser Browser kann keine Filme machen. Richte FFmpeg dort ein, oder öffne das Pult in einem neueren Chrome, Edge oder Firefox.',
  'no-such-demonstration': 'Es ist nicht mehr da.',
  'no-such-performance': 'Diese Aufnahme gibt es nicht mehr. Füge sie noch einmal hinzu.',
  'performance-unreadable': 'Darin ist kein Ton, der sich lesen lässt.',
  'performance-not-followed':
    'Die Übung ließ sich darin nicht verfolgen. Klingt die ganze Übung, in der gewählten Form?',
  'performance-of-another': 'Darin wird eine andere Übung dieser Lektion gespielt.',
  'no-such-book': 'Dieses Buch gibt es nicht; es wurde in einem anderen Fenster gelöscht.',
  'book-changed': 'Dieses Buch wurde in einem anderen Fenster geändert.',
  'book-unfinished': 'Ein Buch braucht Lektionen und Abschnitte, die da und ohne Fehler sind.',
  'no-such-hour': 'Diese Stunde steht nicht im Heft; sie wurde in einem anderen Fenster gelöscht.',
  'hour-changed': 'Diese Stunde wurde in einem anderen Fenster geändert.',
  'no-such-take': 'Diese Aufnahme hat der Schüler zurückgenommen.',
  'not-a-take': 'Das ist keine Aufnahme von der Übungsseite.',
  'no-such-medium': 'Diese Datei ist nicht mehr da.',
  'medium-refused':
    'Diese Datei lässt sich nicht zeigen: Bilder sind PNG, JPEG, GIF oder schlichtes SVG (bis 5 MB), Ton MP3, M4A, WAV oder FLAC (12 MB), Video MP4 oder WebM (30 MB).',
  'not-a-voice-note': 'Das ist keine Aufnahme, die sich senden lässt.',
  'no-consent': 'Niemand Sorgeberechtigtes hat Aufnahmen zugestimmt.',
  'no-room': 'Für weitere Aufnahmen dieses Schülers ist kein Platz mehr.',
  'no-such-link': 'Dieser private Link ist schon zurückgenommen.',
  'no-such-teacher': 'Diese Lehrkraft ist nicht mehr da.',
  'no-such-invitation': 'Dieser Brief öffnet nichts: Er ist benutzt oder zu alt. Bitte um einen neuen.',
  'no-passkeys-here': 'Unter dieser Adresse gibt es keine Passkeys.',
  'passkey-refused': 'Dieser Passkey öffnet hier nichts.',
  'no-such-passkey': 'Diesen Passkey gibt es nicht mehr.',
  'name-taken': 'Diesen Namen hat schon eine andere Lehrkraft.',
  'first-stays': 'Die erste Lehrkraft bleibt, und zwar als Leitung.',
  'no-passphrase': 'Erst eine Passphrase setzen: „shedbook passphrase“.',
  'school-backup': 'Bei mehreren Lehrkräften wird auf dem Rechner gesichert: „shedbook backup“.',
  'head-only': 'Das macht die Leitung der Schule.',
  'not-yours': 'Das hat eine andere Lehrkraft gemacht. Verdopple es, um es zu ändern.',
  'sign-in-first': 'Erst anmelden: das Pult neu öffnen.',
  'wrong-passphrase': 'Das ist nicht die Passphrase.',
  'too-often': 'Das wurde zu oft versucht. Eine Viertelstunde warten.',
  'unreadable-file': 'Die Datei konnte nicht gelesen werden.',
  unreadable: 'Die Datei konnte nicht gelesen werden ({$why}).',
  'lesson-has-errors': 'Der Text hat Probleme; bringe sie zuerst in Ordnung.',
  damaged:
    'Was hier aufgehoben ist, ist auf dem Laufwerk beschädigt. „shedbook doctor“ sichert, was noch lesbar ist.',
  'disk-full':
    'Das Laufwerk, auf dem das Pult alles aufhebt, ist voll; dies ist noch nicht aufgehoben. Platz schaffen; verloren ist nichts.',
  'too-much': 'Das braucht mehr Zeit oder Speicher, als das Pult einer Sache gibt. Mache es kleiner.',
  'store-away':
    'Der Speicher des Pults antwortet gerade nicht; dies ist noch nicht aufgehoben. Gleich noch einmal versuchen.',
  internal: 'Im Server ist etwas kaputt.',
  unreachable: 'Der Server antwortet nicht.',
});
