/** Why there is no report of a take, and what one cannot tell, in German. */
import type { UnheardFact } from '@shedbook/core';
import type { ListenFact } from '@shedbook/listen';
import { sentences } from '../../facts/sentences.ts';

/** Sentences on what was listened to. */
export const listening = sentences<ListenFact | UnheardFact>()({
  // No report.
  'no-sound': 'Die Aufnahme enthält keinen Ton.',
  'silent-recording': 'Die Aufnahme ist stumm. War das richtige Mikrofon gewählt und eingeschaltet?',
  'no-drum-notes': 'Die Datei enthält keine Schläge auf dem Schlagzeug.',
  'no-taps': 'In dieser Aufnahme waren keine Schläge zu finden.',
  'only-the-loudspeaker': 'Zu hören war nur, was der Lautsprecher spielte; niemand hat mitgespielt.',
  'nothing-played': 'Hier wurde nichts gespielt.',
  'nothing-asked': 'Es war nichts verlangt, also wurde nichts gehört.',
  'no-drums-followed':
    'Es waren keine Schläge zu finden, denen sich folgen lässt. Ist das eine Aufnahme eines Schlagzeugs?',
  'no-pulse-followed': 'Die Schläge dieser Datei folgen keinem Puls dieser Übung.',
  'no-beat-followed':
    'Diesem Spiel war kein Schlag zu entnehmen: Es ist zu kurz oder zu frei. Ein Tempo hilft, wo eines bekannt ist.',
  'sound-of-no-exercise':
    'Was zu hören ist, folgt dieser Übung nicht. Ist das eine Aufnahme eines Schlagzeugs, das sie spielt? Auf einem Übungspad oder Tisch: bitte vorher angeben.',
  'notes-of-no-exercise':
    'Was gespielt wurde, folgt dieser Übung nicht. Ist es eine andere Lektion, eine andere Form oder Taktart?',
  // A report that cannot tell everything.
  'not-heard': '{$voice :the at=start} war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.',
  'not-listened-for':
    '{$voice :the at=start} wird noch nicht mitgehört: Diese Schläge zählen nicht und fehlen nicht. Ein E-Drum-Set sendet sie.',
  'hard-to-tell':
    '{$voice :the at=start} ist in dieser Aufnahme kaum von den anderen Stimmen zu unterscheiden; diese Schläge sind geraten.',
  'from-loudspeaker':
    '.input {$count :integer} .match $count one {{{$voice :the at=start}: {$count} Schlag ist nicht von dem zu unterscheiden, was der Lautsprecher spielte; mit Kopfhörern geht es.}} * {{{$voice :the at=start}: {$count} Schläge sind nicht von dem zu unterscheiden, was der Lautsprecher spielte; mit Kopfhörern geht es.}}',
  'under-others':
    '.input {$count :integer} .match $count one {{{$voice :the at=start}: {$count} Schlag liegt unter einem lauteren und ist nicht zu beurteilen; gespielt oder ausgelassen, es klingt gleich.}} * {{{$voice :the at=start}: {$count} Schläge liegen unter lauteren und sind nicht zu beurteilen; gespielt oder ausgelassen, es klingt gleich.}}',
  'brush-drawn':
    '.input {$count :integer} .match $count one {{{$count} Wischer mit dem Besen ist nicht beurteilt: Wo er beginnt, ist nicht zu hören.}} * {{{$count} Wischer mit dem Besen sind nicht beurteilt: Wo sie beginnen, ist nicht zu hören.}}',
  'written-as-elsewhere':
    '.input {$count :integer} .match $count one {{{$voice :the at=start}: {$count} Schlag war nicht zu hören, weil zugleich {$under :the} erklingt; er steht da wie auf den anderen Schlagzeiten.}} * {{{$voice :the at=start}: {$count} Schläge waren nicht zu hören, weil zugleich {$under :the} erklingt; sie stehen da wie auf den anderen Schlagzeiten.}}',
  'as-other-exercises':
    'Was zu hören ist, passt ebenso zu Übung {$exercises :exercises type=or}: Welche gespielt wurde, ist nicht zu sagen.',
  'other-tempo': 'Gespielt wurde mit {$bpm :integer} Vierteln in der Minute, nicht mit {$askedBpm :integer}.',
  'heard-with-line-check': 'Gehört mit dem Linecheck „{$name}“ dieses Schlagzeugs.',
  'partly-recognised': 'Nur ein Teil der Übung wurde erkannt; die Zahlen sind mit Vorsicht zu lesen.',
});
