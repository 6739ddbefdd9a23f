/** Films of exercises, in German. */
import type * as english from '../../english/desk/films.ts';
import { translation } from '../../message/translated.ts';

/** Words of `films`. */
export const films = translation<typeof english.films>()({
  title: 'Film',
  hint: 'Übungen als Film: der Groove, Hand um Hand und Fuß um Fuß, dann jede mit Einzähler, Ball, Zählzeiten, Kapiteln und Untertiteln.',
  opens: 'Film machen',
  shape: 'Format',
  shapes: { landscape: 'quer', portrait: 'hoch' },
  scheme: 'Papier',
  schemes: { light: 'hell', dark: 'dunkel' },
  buildUp: 'Mit dem Groove beginnen, Hand um Hand und Fuß um Fuß',
  countAloud: 'Zum Klick laut zählen',
  rate: 'Bilder in der Sekunde',
  over: 'Zum eigenen Spiel',
  overHint:
    'Ein Video oder eine Aufnahme, in der du die Übung spielst: Seite und Ball folgen dir. Von mehreren einer Übung wird die mit den wenigsten Fehlern gezeigt; nimm die anderen heraus, um selbst zu wählen.',
  whichPlayed: 'Was gespielt wird',
  add: 'Video oder Aufnahme hinzufügen',
  sending: 'wird gesendet: {$percent :integer} % …',
  hearing: 'wird angehört …',
  heard:
    '.input {$faults :integer} .match $faults 0 {{{$duration}, ohne Fehler.}} one {{{$duration}, {$faults} Fehler.}} * {{{$duration}, {$faults} Fehler.}}',
  playedIn: 'Übung {$n :exercise}: {$file}',
  isShown: 'Sie wird gezeigt.',
  takeOut: '{$file} herausnehmen',
  picturePlace: 'Dein Bild',
  places: {
    usual: 'wo es passt',
    beside: 'daneben',
    above: 'darüber',
    corner: 'in der Ecke',
    none: 'nicht zeigen',
  },
  needsFfmpeg:
    'Deinem eigenen Spiel lässt sich nur folgen, wo der Rechner, auf dem das Pult läuft, FFmpeg hat, ein eigenes Programm, das nicht zu Shedbook gehört. Filme ohne eigenes Spiel brauchen keines.',
  heardFrom: 'Ton',
  sounds: { teacher: 'deiner', both: 'beide', model: 'das Vorbild' },
  speed: 'Geschwindigkeit',
  speeds: { full: 'wie gespielt', half: 'halb so schnell', both: 'nacheinander' },
  plan: '{$duration} Film, {$width :integer useGrouping=never} × {$height :integer useGrouping=never}, etwa {$size}',
  madeHere:
    'Der Rechner, auf dem das Pult läuft, hat kein FFmpeg; darum macht dieser Browser den Film. Diese Seite bitte offen lassen, bis er da ist.',
  make: '.input {$n :integer} .match $n 0 {{Eine Übung wählen}} * {{Film machen}}',
  waiting: 'Ein anderer Film kommt zuerst …',
  sound: 'Ton: {$percent :integer} % …',
  picture: 'Bild: {$percent :integer} % …',
  left: 'noch {$duration}',
  made: 'Der Film ist da:',
  parts: {
    film: 'Film',
    'captions-en': 'Untertitel, englisch',
    'captions-de': 'Untertitel, deutsch',
    chapters: 'Liste der Kapitel',
    cover: 'Titelbild',
  },
  failed: 'Der Film konnte nicht gemacht werden.',
});
