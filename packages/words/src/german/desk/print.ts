/** Print and what goes home, in German. */
import type * as english from '../../english/desk/print.ts';
import { translation } from '../../message/translated.ts';

/** Words of `print`. */
export const print = translation<typeof english.print>()({
  title: 'Drucken',
  paper: 'Papier',
  tablet: 'Tablet',
  counts: 'Zählzeiten unter den Noten',
  stickings: 'Hände',
  legend: 'Zeichenerklärung',
  tickBoxes: 'Kästchen zum Abhaken der Tempi',
  staff: 'System',
  compact: 'eine Linie',
  full: 'ganzer Groove',
  numbering: 'Nummern der Übungen',
  through: 'fortlaufend',
  anew: 'in jedem Abschnitt neu',
  size: 'Größe der Noten',
  download: 'PDF herunterladen',
  preview: 'Vorschau der gedruckten Seiten',
  page: 'Seite {$n :integer} von {$of :integer}',
  preparing: 'Die Seiten werden gestochen …',
  failed: 'Die Seiten konnten nicht gestochen werden.',
  takeHome: 'Zum Üben zu Hause',
  takeHomeHint:
    'Eine Seite mit dieser Lektion, die Lernende auf Handy oder Tablet öffnen: sie spielt, hört zu und geht ohne Netz. Auf einem beliebigen Webserver auspacken.',
  practicePage: 'Adresse dieser Seite',
  practicePageHint: 'Steht auf dem Blatt als Code zum Scannen.',
  practicePageWrong: 'Eine Adresse beginnt mit https://',
  demonstrate: 'Dein eigenes Spiel für Lernende',
  demonstrateHint:
    'Ein Video oder eine Aufnahme, in der du eine Übung spielst: Auf ihrer Seite hören Lernende sie im gespielten Tempo oder langsamer, und Ball und Zählzeiten folgen dir. Eine Minute macht etwa 3 MB aus.',
  keepPlaying: 'Bei der Lektion behalten',
  keepingPlaying: 'Wird behalten …',
  keptPlaying: 'Bei der Lektion behalten: auf der Seite hinter jedem privaten Link und in jedem Paket',
  keptOf: 'Übung {$n :exercise}, {$duration}',
  changedSince: 'nicht gezeigt, denn die Übung ist jetzt eine andere',
  goneSince: 'Von einer Übung, die es hier nicht mehr gibt, {$duration}: nicht gezeigt',
  erasePlaying: 'Dein Spiel von Übung {$n :exercise} löschen',
  eraseGone: 'Dein Spiel der Übung löschen, die es nicht mehr gibt',
  withFilms: 'Zu jeder Übung ein Film',
  filming: 'Film {$n :integer} von {$of :integer} …',
  makePack: 'Paket zum Mitnehmen (ZIP)',
  makingPack: 'Das Paket entsteht; jede Übung aufzunehmen dauert eine Weile …',
  packFailed: 'Das Paket konnte nicht gemacht werden.',
});
