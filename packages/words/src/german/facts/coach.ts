/** What the coach tells, in German. */
import type { CoachFact } from '@shedbook/coach';
import type { PlaceFact } from '@shedbook/core';
import { sentences } from '../../facts/sentences.ts';

/** Sentences, and the clauses in them. */
export const coach = sentences<CoachFact, PlaceFact>()({
  'sore-spot': '{$limb :side} ({$voice :voice}) auf {$place :say}',
  cell: '„{$cell}“',
  'cell-move': '„{$from}“ zu „{$to}“',
  'skill-alone': '{$limb :side}, {$cells :say}',
  'skill-over': '{$limb :side}, {$cells :say}, dazu {$over :sides}',
  'skill-clapped': 'Klatschen, {$cells :say}',
  'skill-hands': 'Hände {$hands}, {$cells :say}',
  'needs-skill':
    '.input {$more :integer} .match $more 0 {{Diese Übung braucht das und sonst nichts Neues.}} one {{Diese Übung braucht das und noch {$more} Neues.}} * {{Diese Übung braucht das und noch {$more} Neue.}}',
  'again-from': 'Diese noch einmal, ab {$bpm :number}.',
  'seldom-holds': '{$skill :say}: gelingt etwa {$percent :integer} von 100 Mal. {$follows :say}',
  'adds-nothing': 'sie braucht nichts, was noch nicht zu hören war',
  'adds-groove': 'das ist der Groove allein, und der muss laufen, bevor etwas dazukommt',
  'adds-count':
    'erst zählen und klatschen, denn das gibt die Unterteilung, die Übung {$exercise :exercise} braucht',
  'adds-clapping': 'erst zählen und klatschen, denn das gibt die Unterteilung, noch ohne Sticks',
  'adds-skill': 'neu ist {$skill :say}',
  'adds-skills': 'neu sind {$skill :say}, und noch {$more :integer}',
  'begin-lesson': 'Zum Anfang: die erste Übung aus „{$lesson}“.',
  'begin-swing':
    'Zum Anfang: vom Swing auf dem Pult fängt „{$lesson}“ am leichtesten an, und das ist die erste Übung daraus.',
  'begin-easiest':
    'Zum Anfang: von allem auf dem Pult fängt „{$lesson}“ am leichtesten an, und das ist die erste Übung daraus.',
  'after-set': 'Wenn gespielt ist, was aufgegeben ist, kommt auf dem Blatt das: {$adds :say}.',
  'next-on-sheet': 'Nichts Gehörtes wackelt; das kommt auf dem Blatt als Nächstes: {$adds :say}.',
  'beside-next': 'Neben dem, was noch nicht sauber ist, kommt auf dem Blatt das: {$adds :say}.',
  'beside-nearest':
    'Neben dem, was noch nicht sauber ist, liegt von dem, was neu ist, das am nächsten: {$adds :say}.',
  'nearest-new': 'Nichts Gehörtes wackelt; von dem, was neu ist, liegt das am nächsten: {$adds :say}.',
  'not-steady': 'Zuletzt wacklig. Noch einmal, ab {$bpm :number}.',
  'not-steady-there': 'Zuletzt wacklig, vor allem {$sore :say}. Noch einmal, ab {$bpm :number}.',
  'teacher-set': 'Das ist eine Hausaufgabe.',
  'teacher-pinned': 'Fest aufgegeben.',
  'up-to': 'Bis {$bpm :number}.',
  'up-to-by': 'Bis {$bpm :number}, fertig {$day :day}.',
  'ready-by': 'Fertig {$day :day}.',
  'teacher-aims': '{$what :say} {$aim :say}',
  'set-not-played': 'Hausaufgabe, noch nicht gespielt.',
  'set-not-clean': 'Hausaufgabe, gespielt, aber noch in keinem Tempo {$times :integer} Mal sauber.',
  'set-not-there': 'Sauber bei {$bpm :number}; aufgegeben bis {$aimBpm :number}.',
  'set-clean': 'Sauber bei {$bpm :number}, so weit wie aufgegeben. Weiter bis {$aimBpm :number}.',
  'set-passed': 'Bestanden bei {$bpm :number}. Weiter bis {$aimBpm :number}.',
  'done-passed': 'Bestanden bei {$bpm :number}, dem Ziel. Kann wegfallen.',
  'done-firm': 'Sitzt bei {$bpm :number}, dem Ziel. Kann wegfallen.',
  'teacher-noted': '{$what :say} {$note}',
  'played-shaky': 'Zuletzt {$day :day} gespielt, da wacklig.',
  'played-firm': 'Zuletzt {$day :day} gespielt, da saß sie; Zeit, nachzusehen.',
  'played-learning': 'Zuletzt {$day :day} gespielt, auf dem Weg.',
  'played-clean':
    'Zuletzt {$day :day} gespielt, sauber bei {$bpm :integer} auf dem Weg zu {$goalBpm :number}.',
  'listen-for': '{$what :say} Zu hören: {$sore :say}.',
  'new-today': 'Heute neu: die nächste auf dem Blatt. Langsam, und zweimal, mit etwas anderem dazwischen.',
  'comes-first': 'Das kommt zuerst: „{$before}“ baut darauf auf.',
  'once-more': 'Noch einmal, nach etwas anderem: sehen, was noch da ist.',
  'warm-up':
    'Erst aufwärmen: leise, locker, langsamer als möglich. So sitzen, dass sich nichts strecken muss.',
  'time-alone': 'Nur Time: laufen lassen und auf die Balance der Hände und Füße hören.',
  'play-freely': 'Der Rest gehört dir: spiel darüber, was du magst.',
  apart: 'Das Tempo steht seit einigen Tagen: ein Teil davon allein, langsamer.',
  'apart-there':
    'Das Tempo steht seit einigen Tagen: ein Teil davon allein, langsamer. Es geht um {$sore :say}.',
  'put-back': 'Nun wieder das Ganze: der Teil kommt an seinen Platz zurück.',
  'rest-now': 'Sticks weglegen, aufstehen, Hände und Ohren ruhen lassen.',
  'exercise-title': '{$name}',
  'groove-title': '{$lesson}: nur der Groove',
  'break-title': 'Pause machen',
  'no-time-today': 'Heute keine Zeit: alles wartet, nichts geht verloren.',
  'no-lesson-yet': 'Noch gibt es keine Lektion zum Üben.',
  'taken-apart':
    '.input {$exercises :integer} .match $exercises one {{{$exercises} Übung steht seit einigen Tagen. Sie wird zerlegt, und der Rest des Blatts geht weiter.}} * {{{$exercises} Übungen stehen seit einigen Tagen. Sie werden der Reihe nach zerlegt, und der Rest des Blatts geht weiter.}}',
  'set-and-gone':
    '.input {$exercises :integer} .match $exercises one {{{$exercises} der aufgegebenen Übungen steht nicht mehr in den Lektionen.}} * {{{$exercises} der aufgegebenen Übungen stehen nicht mehr in den Lektionen.}}',
});
