/** Verdicts in German: what to do, in words of sound and movement, the figures behind it, and praise. */
import type { PlaceFact } from '@shedbook/core';
import type { VerdictFact } from '@shedbook/judge';
import { sentences } from '../../facts/sentences.ts';

/** What to do about a loudspeaker, wherever it is read: “Mehr” and “Ich spiele” are the practice page's. */
const QUIETEN =
  'Setz Kopfhörer auf, oder lass ihn auslassen, was du selbst spielst (auf der Übeseite: „Mehr“, „Ich spiele“).';

/** Sentences on what was played. */
export const verdicts = sentences<VerdictFact, PlaceFact>()({
  // One thing to do.
  'do-play-what-is-asked': 'Das war eine andere Übung. Sieh auf die Seite, sing sie einmal, dann spiel sie.',
  'do-play-the-asked':
    'Das war Übung {$exercise :exercise}. Sieh auf die Seite, sing die verlangte, dann spiel sie.',
  'do-swing':
    'Lass die Offbeats swingen: Die letzte Triole fällt spät, dicht vor den nächsten Schlag. Sie kamen gerade, in der Mitte.',
  'do-swing-voice':
    'Lass die Offbeats swingen ({$voice :voice}): Die letzte Triole fällt spät, dicht vor den nächsten Schlag. Sie kamen gerade, in der Mitte.',
  'do-swing-sixteenths':
    'Lass die Sechzehntel swingen: Jede zweite fällt spät, dicht vor die nächste Achtel. Sie kamen gerade, in der Mitte.',
  'do-swing-voice-sixteenths':
    'Lass die Sechzehntel swingen ({$voice :voice}): Jede zweite fällt spät, dicht vor die nächste Achtel. Sie kamen gerade, in der Mitte.',
  'do-straighten':
    'Spiel die Achtel gerade: Jeder Offbeat liegt in der Mitte zwischen zwei Schlägen. Sie kamen spät, wie in einem Shuffle.',
  'do-straighten-voice':
    'Spiel die Achtel gerade ({$voice :voice}): Jeder Offbeat liegt in der Mitte zwischen zwei Schlägen. Sie kamen spät, wie in einem Shuffle.',
  'do-straighten-sixteenths':
    'Spiel die Sechzehntel gerade: Jede zweite liegt in der Mitte zwischen zwei Achteln. Sie kamen spät, wie in einem Shuffle.',
  'do-straighten-voice-sixteenths':
    'Spiel die Sechzehntel gerade ({$voice :voice}): Jede zweite liegt in der Mitte zwischen zwei Achteln. Sie kamen spät, wie in einem Shuffle.',
  'do-breathe': 'Atme, und gib jedem Schlag seine ganze Länge: Das Tempo läuft davon.',
  'do-keep-moving': 'Bleib in Bewegung, und denk schon an den nächsten Schlag: Das Tempo sinkt.',
  'do-join-in': 'Niemand war zu hören. Hör zu, solange du magst, und steig ein, wenn du so weit bist.',
  'do-quieten-loudspeaker': `Nur der Lautsprecher war zu hören. ${QUIETEN}`,
  'do-come-nearer':
    'Es war zu wenig zu hören, um zu urteilen. Stell das Mikrofon näher an die Trommeln, und halte den Raum still.',
  'do-bring-in': 'Jetzt mit {$voice :the case=dative}: Diese Stimme blieb aus.',
  'do-fill-in': 'Spiel jeden geschriebenen Schlag ({$voice :voice}): Einige fehlten.',
  'do-leave-out': 'Lass weg, was nicht geschrieben steht ({$voice :voice}): Dort ist Ruhe.',
  'do-lay-back':
    '{$voice :the at=start} darf etwas später kommen: Lass jeden Schlag fallen, ohne zu drängen.',
  'do-push': '{$voice :the at=start} führt: Beginne jeden Schlag etwas früher.',
  'do-even-out':
    'Spiel gleichmäßig ({$voice :voice}): kleine Bewegungen, immer gleich hoch, und hör auf die Lücken zwischen den Schlägen.',
  'do-speak-up': '{$voice :the at=start} soll sprechen: Hol weiter oben aus.',
  'do-tell-from-loudspeaker': `{$voice :the at=start} ist vom Lautsprecher nicht zu unterscheiden. ${QUIETEN}`,
  'do-let-be-heard':
    '{$voice :the at=start} war zu schlecht zu hören, um zu urteilen. Rück das Mikrofon dorthin.',
  'do-fill-in-at': '{$voice :the at=start} fehlt auf {$place :say}: Lass es dort klingen.',
  'do-put-where-written':
    '{$voice :the at=start} kam an anderer Stelle: Sieh nach, wo der Schlag steht, und lass ihn auf {$place :say} klingen.',
  'do-leave-out-near': 'Ruhe bei {$place :say} ({$voice :voice}): Dort ist nichts geschrieben.',
  'do-wait-at': '{$voice :the at=start} darf auf {$place :say} später fallen: Halte einen Moment zurück.',
  'do-sooner-at':
    '{$voice :the at=start} kommt auf {$place :say} zu spät: Beginne die Bewegung dorthin früher.',
  'do-wait-for-last-triplet':
    '{$voice :the at=start} darf auf {$place :say} später fallen: Die letzte Triole liegt dicht vor dem nächsten Schlag.',
  'do-wait-for':
    'Warte mit {$voice :the case=dative} auf den Klang der führenden Stimme ({$lead :voice}): Beides soll wie eins klingen.',
  'do-sooner-than':
    'Beginne früher ({$voice :voice}): Es soll mit {$lead :the case=dative} wie eins klingen.',
  'do-ghost-softer':
    '{$voice :the at=start}: Die leisen Schläge sollen leise bleiben. Lass sie dicht über dem Fell fallen, damit die Akzente herausstehen.',
  'do-play-bar': 'Takt {$bar} fehlte: Spiel jeden Takt, einen nach dem anderen.',
  'do-play-bars': 'Die Takte {$bars :list} fehlten: Spiel jeden Takt, einen nach dem anderen.',
  'do-play-in-order':
    'Die Takte kamen in anderer Reihenfolge, {$bars :list}: Spiel sie, wie sie geschrieben sind, einen nach dem anderen.',
  'do-softer-under':
    '{$voice :the at=start} soll leiser, von weiter unten kommen, so dass die führende Stimme darüber liegt ({$lead :voice}).',
  'do-move-to':
    'Der Rhythmus stimmt: Spiel ihn auf {$voice :the case=dative}, nicht auf {$instead :the case=dative}.',
  'do-come-in-sooner':
    '.input {$beats :integer} .match $beats one {{Steig {$beats} Schlag früher ein: Der ganze Rhythmus liegt {$beats} Schlag zu spät.}} * {{Steig {$beats} Schläge früher ein: Der ganze Rhythmus liegt {$beats} Schläge zu spät.}}',
  'do-come-in-later':
    '.input {$beats :integer} .match $beats one {{Steig {$beats} Schlag später ein: Der ganze Rhythmus liegt {$beats} Schlag zu früh.}} * {{Steig {$beats} Schläge später ein: Der ganze Rhythmus liegt {$beats} Schläge zu früh.}}',
  'do-play-slower': 'Nimm das verlangte Tempo: Das waren {$bpm :integer}, und zu schnell.',
  'do-play-faster': 'Nimm das verlangte Tempo: Das waren {$bpm :integer}, und zu langsam.',
  // The figures behind it.
  'figure-bars-missing': 'Ausgelassene Takte: {$times :integer} von {$of :integer}.',
  'figure-bars-missing-or':
    'Ausgelassene Takte: {$times :integer} von {$of :integer}. Gespielt wurde Übung {$exercise :exercise} ganz, vielleicht war also die gemeint.',
  'figure-missing':
    '.input {$of :integer} .input {$times :integer} .match $of $times one * {{{$limb :side at=start} ({$voice :voice}): Der einzige Schlag fehlt.}} * one {{{$limb :side at=start} ({$voice :voice}): {$times} von {$of} Schlägen fehlt.}} * * {{{$limb :side at=start} ({$voice :voice}): {$times} von {$of} Schlägen fehlen.}}',
  'figure-missing-at':
    '.input {$times :integer} .match $times one {{{$limb :side at=start} ({$voice :voice}): {$times} von {$of :integer} Schlägen fehlt, {$where :say}.}} * {{{$limb :side at=start} ({$voice :voice}): {$times} von {$of :integer} Schlägen fehlen, {$where :say}.}}',
  'figure-extra':
    '.input {$times :integer} .match $times one {{{$limb :side at=start} ({$voice :voice}): {$times} Schlag zu viel.}} * {{{$limb :side at=start} ({$voice :voice}): {$times} Schläge zu viel.}}',
  'figure-extra-near':
    '.input {$times :integer} .match $times one {{{$limb :side at=start} ({$voice :voice}): {$times} Schlag zu viel, bei {$places :list}.}} * {{{$limb :side at=start} ({$voice :voice}): {$times} Schläge zu viel, bei {$places :list}.}}',
  'figure-early': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu früh, durchweg.',
  'figure-late': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu spät, durchweg.',
  'figure-uneven':
    '{$limb :side at=start} ({$voice :voice}): Die Schläge liegen ±{$ms :integer} ms um ihren Platz.',
  'figure-early-at':
    '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu früh {$where :say}.',
  'figure-late-at': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu spät {$where :say}.',
  'on-places': 'auf {$places :list}',
  'in-parts': 'in {$parts :list}',
  'part-bar': 'Takt {$bar :integer}',
  'part-round': 'Runde {$round :integer}',
  'part-bar-of-round': 'Takt {$bar :integer} von Runde {$round :integer}',
  'figure-loud':
    '{$limb :side at=start} ({$voice :voice}): etwa {$db :integer} dB zu laut neben {$lead :the case=dative}.',
  'figure-soft':
    '{$limb :side at=start} ({$voice :voice}): etwa {$db :integer} dB zu leise neben {$lead :the case=dative}.',
  'figure-rushing': 'Das Tempo steigt um etwa {$percent :number maximumFractionDigits=1} Prozent.',
  'figure-dragging': 'Das Tempo fällt um etwa {$percent :number maximumFractionDigits=1} Prozent.',
  'figure-slow': 'Etwa {$percent :integer} Prozent langsamer als verlangt.',
  'figure-fast': 'Etwa {$percent :integer} Prozent schneller als verlangt.',
  'figure-ahead':
    'Alles kam gleichmäßig etwa {$ms :integer} ms zu früh: Das können die Geräte sein und ist kein Fehler.',
  'figure-behind':
    'Alles kam gleichmäßig etwa {$ms :integer} ms zu spät: Das können die Geräte sein und ist kein Fehler.',
  // Praise.
  'praise-all-there': 'Alle {$count :integer} Schläge sind da, und keiner zu viel.',
  'praise-tempo-holds': 'Das Tempo hält bei {$bpm :integer}.',
  'praise-steady':
    '{$voice :the at=start} ist gleichmäßig: Die Hälfte der Schläge liegt bis zu {$ms :integer} ms um ihren Platz.',
  'praise-clean': 'Das war sauber.',
  'time-played': 'Gespielt wurde der Groove allein.',
  'time-most-like': 'Am ehesten ist es der Groove allein.',
  'exercise-played': 'Gespielt wurde Übung {$exercise :exercise}.',
  'exercise-most-like': 'Am ehesten ist es Übung {$exercise :exercise}.',
  'clean-in-form': 'In der Form „{$form}“ ist nichts daran auszusetzen: War sie gemeint?',
});
