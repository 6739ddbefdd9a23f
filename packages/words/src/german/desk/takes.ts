/** Recordings of students, in German. */
import type * as english from '../../english/desk/takes.ts';
import { translation } from '../../message/translated.ts';

/** Words of `takes`. */
export const takes = translation<typeof english.takes>()({
  whatOf: '{$file}: Was sollte gespielt werden?',
  whose: '{$file}: Von wem ist die Aufnahme? Den Namen hinzufügen; sie wartet hier.',
  anyTempo: 'beliebig; notiert: {$bpm :number}',
  listen: 'Anhören lassen',
  leave: 'Lassen',
  reading: 'Die Aufnahme wird geöffnet …',
  listening: 'Es wird zugehört …',
  measuring: 'Es wird ausgewertet, was gespielt wurde …',
  failed: 'Diese Datei ist keine Aufnahme, die hier gehört werden kann: WAV, MP3, M4A, Ogg, FLAC oder MIDI.',
  nothingToPlay: 'Noch gibt es keine Lektion mit einer Übung, von der das eine Aufnahme sein könnte.',
  whichever: 'die gespielte',
  untold: 'Welche Übung gespielt wurde, ist nicht herauszuhören: Wähl sie aus und lass noch einmal hören.',
  hearAsExercise: 'Als Übung {$n :exercise} anhören',
  hearAs: 'Als „{$form}“ anhören',
  title: '{$lesson} · Übung {$exercise}',
  picture: 'Was gespielt wurde, als Bild: {$title}',
  keep: 'Bei {$name} behalten',
  kept: 'Bei {$name} behalten.',
  of: 'Aufnahmen, die hier gehört wurden',
  gone: 'Ihre Übung steht nicht mehr in den Lektionen.',
});
