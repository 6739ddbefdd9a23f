/** How the command line is used, in German. */
import type * as english from '../english/cli-help.ts';
import { translation } from '../message/translated.ts';

/** The texts of `--help`, by command: each of its arguments and options by its name. */
export const help = translation<typeof english.help>()({
  intro: `Lektionen fürs Schlagzeug: aus einer Textdatei werden ein gedrucktes Blatt, übliche Dateien, Klang und Übung.

Eine Lektion ist eine Datei wie first.lesson.yaml; fünf Zeilen genügen:

  title: First swing
  tempo: 80
  vocabulary: [..., ..x, x.., x.x]
  exercises:
    - x.. ..x x.x ...

Leerzeichen trennen die Schläge des Takts; darin steht ein Zeichen für jede Stelle: x ein Schlag, \
X ein Akzent, g eine Ghost Note, . nichts.`,
  language: 'en oder de; ohne Angabe die Sprache der Umgebung',
  afterError: '(shedbook --help sagt, wie es geht)',
  ofVersion: 'die Version sagen',
  ofHelp: 'sagen, wie es geht',
  helpCommand: 'sagen, wie ein Befehl geht',
  titles: {
    usage: 'Aufruf:',
    arguments: 'Angaben:',
    options: 'Wahlweise:',
    commands: 'Befehle:',
  },
  fresh: {
    summary: 'eine Lektion mit einem Groove beginnen',
    description:
      'Schreibt eine Lektion, die mit einem unserer Grooves beginnt, mit Vokabular und einem ersten Takt. Ohne Groove sagt es, welche es gibt.',
    groove: 'Name eines Grooves',
    title: 'Titel der Lektion; ohne Angabe der Name des Grooves',
    out: 'Datei, in die geschrieben wird; ohne Angabe wird der Text ausgegeben',
  },
  check: {
    summary: 'sagen, was an einer Lektion falsch ist, alles auf einmal',
    description: 'Prüft Lektionen. Alle Fehler werden auf einmal gesagt, als Datei:Zeile:Spalte.',
    lesson: 'Dateien von Lektionen und Büchern',
    json: 'Fehler als JSON',
  },
  build: {
    summary: 'Blatt, übliche Dateien und Klang einer Lektion machen',
    description:
      'Macht alles, was in einer Lektion steht: das gedruckte Blatt, MIDI, MusicXML und auf Wunsch Klang.',
    lesson: 'Datei einer Lektion, oder eines Buches (.book.yaml), von dem eine PDF-Datei gemacht wird',
    out: 'wohin damit',
    audio: 'jede Übung aufnehmen: wav, mp3, ogg oder flac',
    tempo: 'Viertel in der Minute; ohne Angabe das Anfangstempo der Lektion',
    form: 'Form für Klang und MIDI: loop, "four and two", time oder eine der Lektion',
    layers: 'wie viele Schichten des Grooves spielen, oder "each": eine Aufnahme jeder Stufe',
    mute: 'Stimmen, die wegbleiben, durch Kommas getrennt: wer lernt, spielt sie selbst',
    exercise: 'nur diese Übungen in Klang und üblichen Dateien: 3, 1,4 oder 2-5',
    paper: 'A4, Letter, A5 oder tablet, gleich was in der Lektion steht',
    loudness: 'Lautheit der Aufnahmen in LUFS; ohne Angabe -16, leiser, wo sonst Akzente leiser würden',
    kit: 'eine Datei SoundFont 2 (.sf2), die statt des eingebauten Schlagzeugs spielt',
    click: 'ein Klick, der mitspielt: all oder Zählzeiten wie 2,4',
    subdivide: 'leise Klicks zwischen den Zählzeiten: 2, 3, 4 oder 6 Stellen',
    gap: 'einige Takte Klick, dann einige ohne, immer wieder: 2/2',
    countAloud: 'eine Stimme zählt auf jeden Klick, auch im Einzähler; ohne --click auf jede Zählzeit',
    dry: 'Aufnahmen ohne den Raum',
    pack: 'ein Paket für zu Hause: die Seite zum Üben als Ordner und als practice.zip',
    performance:
      'mit --pack: ein Video oder eine Aufnahme, in der die Übung gespielt wird; das Paket spielt sie vor, der Ball folgt ihr, in vollem Tempo und verlangsamt; 3=DATEI, wo es mehrere Übungen gibt. Braucht FFmpeg',
    films: 'mit --pack: ein Film von jeder Übung, zu ihrer Darbietung, wo es eine gibt. Braucht FFmpeg',
    json: 'was gemacht wurde, als JSON',
    after: `
Beispiele:
  shedbook build first.lesson.yaml --out first
      sheet.pdf, seine Seiten als SVG, und je eine Datei MIDI und MusicXML für das Blatt und jede Übung
  shedbook build first.lesson.yaml --out first --audio mp3 --form "four and two" --tempo 96
      dazu eine Aufnahme jeder Übung in dieser Form
  shedbook build first.lesson.yaml --out first --audio wav --layers each --exercise 1
      Übung 1, Schicht um Schicht aufgebaut
  shedbook build first.lesson.yaml --out first --audio mp3 --mute ride
      alles außer dem Ride, das spielt, wer lernt
  shedbook build first.lesson.yaml --out first --audio mp3 --mute ride --click 2,4 --gap 2/2
      dasselbe mit einem Klick auf 2 und 4, der alle zwei Takte für zwei aussetzt
  shedbook build first.lesson.yaml --out first --pack
      first/practice für jeden Webserver, und first/practice.zip zum Verschicken: geübt wird im Browser
  shedbook build first.lesson.yaml --out first --pack --performance 3=dritte.mov
      dasselbe, und zu Übung 3 das eigene Spiel: Schüler hören es im gespielten Tempo und halb so schnell

Vorsicht mit der Lautstärke: erst leise über Kopfhörer einstellen, und den Ohren Pausen gönnen.`,
  },
  compose: {
    summary: 'aus dem Wortschatz eine Seite Übungen schreiben, von leicht nach schwer',
    description:
      'Komponiert Übungen: keine zwei gleich, jeder Übergang zwischen Zellen kommt vor, jede ein wenig schwerer.',
    lesson: 'Datei einer Lektion mit einem Wortschatz',
    section: 'der Abschnitt einer geteilten Lektion, für den sie sind',
    count: 'wie viele Übungen; ohne Angabe, was in der Lektion steht, sonst 24',
    seed: 'eine andere Saat gibt eine andere Seite, dieselbe immer dieselbe',
    keep: 'Übungen, die bleiben, wo sie sind, durch Kommas getrennt',
    bars: 'Takte einer Übung: 1 bis 8',
    idiom: 'wie weit geläufige Figuren zitiert werden: bei 0 zählt jeder Übergang, bei 1 sind sie die Themen',
    headings: 'die erste Übung jeder Gruppe nach ihrer Figur nennen',
    with: 'zwei Gliedmaßen im Gespräch: die Stimme, die antwortet, wie bass',
    phrase: 'Phrasen: call-and-answer in 2, 4 oder 8 Takten, aaba oder sentence in 4 oder 8',
    questions: 'kurz für --phrase call-and-answer',
    weak: 'eine Seite für einen Übergang zwischen Zellen, wie "..x ..."',
    review: 'eine Seite, die Übungen dieser Lektionen mischt',
    variations: 'Varianten einer Übung vorschlagen; ohne --put wird nichts geschrieben',
    easier: 'Takte vorschlagen, die eine Stufe leichter sind als eine Übung, und sagen, was sich ändert',
    harder: 'Takte vorschlagen, die eine Stufe schwerer sind als eine Übung',
    like: 'Takte vorschlagen wie eine Übung, und so schwer wie sie',
    goal: 'die kürzeste Seite vorschlagen, die zu einer Übung führt',
    put: 'Vorgeschlagenes neben seine Übung stellen: dahinter, was zu ihr führt davor',
    has: 'mit --goal: Übungen, die schon sitzen, durch Kommas getrennt',
    term: 'ein Halbjahr aus so vielen Seiten: Zellen kommen nach und nach, jeder Wechsel kehrt in wachsenden Abständen wieder',
    out: 'in diese Datei schreiben statt in die Lektion',
    explain: 'jeden Takt mit seiner Schwierigkeit ausgeben',
    json: 'der Bericht als JSON',
    after: `
Beispiele:
  shedbook compose first.lesson.yaml --count 24
      24 Übungen aus dem Wortschatz, in die Lektion geschrieben; Kommentare bleiben
  shedbook compose first.lesson.yaml --count 24 --seed 7 --out second.lesson.yaml
      eine andere Seite, in eine andere Datei
  shedbook compose first.lesson.yaml --keep 1,2 --explain
      1 und 2 bleiben, der Rest entsteht darum herum; sagt, wie schwer jeder Takt ist
  shedbook compose first.lesson.yaml --idiom 1 --headings
      Figuren, mit denen alle anfangen, als Themen, jede Gruppe unter dem Namen ihrer Figur
  shedbook compose first.lesson.yaml --with bass --out dialogue.lesson.yaml
      die begleitende Stimme und die Bassdrum teilen sich die Rhythmen des Wortschatzes
  shedbook compose first.lesson.yaml --term 6 --count 16 --out term.lesson.yaml
      sechs Seiten mit je sechzehn Übungen, jede ein Abschnitt der Lektion
  shedbook compose first.lesson.yaml --weak "..x ..." --count 12 --out weak.lesson.yaml
      zwölf Takte, die alle von einer letzten Triole in eine Pause führen`,
  },
  prepare: {
    summary: 'schreiben, was vor einem Abschnitt kommt: seine Unterteilung, gezählt und geklatscht',
    description:
      'Schreibt vor einen Abschnitt einen mit geklatschten Übungen, aus seiner Taktart und seinem Feel, mit einem Klick, der immer weniger wird, bis er schweigt; der Abschnitt nennt ihn in `before`, und Übepläne stellen ihn an den Anfang. Alles andere bleibt, wie es ist.',
    lesson: 'eine Lektionsdatei mit Übungen',
    section: 'der Abschnitt einer geteilten Lektion, für den es ist',
    out: 'die Lektion damit stattdessen in diese Datei schreiben',
  },
  arrange: {
    summary: 'Übungen aufteilen, über das Set führen, mit Akzenten, Händen oder einem Fill versehen',
    description:
      'Geht ein zweites Mal über Übungen, die da sind, und fügt hinten an, was daraus wird: nichts wird überschrieben. Mehreres geschieht nacheinander.',
    lesson: 'Datei einer Lektion mit Übungen',
    share: 'den Rhythmus zwischen seiner Stimme und einer tieferen aufteilen',
    lower: 'die tiefere Stimme von --share; ohne Angabe bass',
    kit: 'den Rhythmus über Snare und Toms führen',
    accents: 'einige Schläge betonen',
    hands: 'sagen, welche Hand welchen Schlag spielt',
    fill: 'eine Phrase mit einem Fill von 1 oder 2 Zählzeiten enden',
    phrase: 'Takte dieser Phrase; ohne Angabe 4',
    exercise: 'nur diese Übungen: 3, 1,4 oder 2-5',
    seed: 'eine andere Saat gibt andere freie Akzente und Fills, dieselbe immer dieselben',
    out: 'nur die neuen Übungen in diese Datei schreiben, statt sie der Lektion anzufügen',
    explain: 'jede Übung ausgeben: was getan wurde und wie schwer sie ist',
    json: 'die Übungen, was getan wurde und was nicht ging, als JSON',
    after: `
Regeln:
  --share    beats-below, long-below, by-turns, accents-below
  --kit      by-beat, by-stroke, down-the-bar, accents-on-toms
  --accents  on-the-beat, off-the-beat, first-of-group, last-of-group, every-third, free
  --hands    by-turns, by-place, doubles, paradiddle

Beispiele:
  shedbook arrange first.lesson.yaml --share long-below --exercise 1-8 --explain
      die Übungen 1 bis 8 noch einmal, lange Schläge auf der Bassdrum, hinten angefügt
  shedbook arrange first.lesson.yaml --accents first-of-group --hands by-turns --out hands.lesson.yaml
      Akzente und Hände für die ganze Seite, in eine andere Datei
  shedbook arrange first.lesson.yaml --fill 2 --phrase 4 --seed 3
      jede Übung als vier Takte, die mit einem Fill von zwei Zählzeiten enden

Von keiner Hand wird beim Zieltempo mehr verlangt, als veröffentlicht ist, dass eine Hand durchhält; was sich nicht
spielen lässt, wird gesagt.`,
  },
  weights: {
    summary: 'sagen, was Aufnahmen von Schülern über die Gewichte der Schwierigkeit verraten',
    description:
      'Passt die Gewichte der Schwierigkeit an das an, was sauber gespielt wurde und was nicht, von den heutigen aus, und zeigt jedes mit seinem Fehler. Ohne --accept wird nichts geschrieben.',
    lesson: 'eine Lektionsdatei',
    log: 'ein Übeprotokoll; einmal für jeden Schüler',
    accept: 'die angepassten Gewichte in die Lektion schreiben',
    json: 'die Anpassung als JSON',
  },
  why: {
    summary: 'sagen, was eine Übung schwer macht, oder schwerer als eine andere',
    description: 'Erklärt Stück für Stück, warum eine Übung über dem Groove der Lektion so schwer ist.',
    lesson: 'Datei einer Lektion',
    exercise: 'ihre Nummer',
    other: 'Nummer der Übung, mit der sie verglichen wird',
    json: 'die Teile als JSON',
  },
  listen: {
    summary: 'sagen, was in der Aufnahme einer Übung wirklich gespielt wurde',
    description:
      'Hört die Aufnahme einer Übung und sagt für jede Hand und jeden Fuß, was gespielt wurde, wann und wie laut. WAV, FLAC, MP3, Ogg und WebM werden direkt gelesen, M4A und Videos vom Handy durch FFmpeg, wo es eingerichtet ist.',
    take: 'eine Aufnahme, oder die MIDI-Datei eines elektronischen Schlagzeugs',
    lesson: 'die Lektion, aus der die Übung ist',
    exercise: 'die Übung, die gespielt wurde; ohne Angabe die gespielte oder der Groove allein',
    form: 'die Form, die gespielt wurde; ohne Angabe loop oder eine andere, in der nichts auszusetzen ist',
    tempo: 'wie schnell ungefähr, in Vierteln in der Minute',
    latency: 'die Aufnahme begann mit dem Klick, der darin so viel später klingt: gegen den Klick messen',
    level: 'was der Rede wert ist: für beginner, intermediate oder advanced',
    plays: 'Stimmen, die hier gespielt werden, durch Kommas getrennt; ohne Angabe alle, die geschrieben sind',
    on: 'worauf gespielt wurde: kit, oder pad für ein Übungspad oder einen Tisch, wo jeder kurze Schlag zur Übung zählt; ohne Angabe kit',
    playing:
      'eine Aufnahme dessen, was während der Aufnahme aus einem Lautsprecher kam, vom ersten Sample an: es wird herausgenommen',
    keys: 'welche Tasten das elektronische Schlagzeug sendet, wo sie ungewöhnlich sind: siehe shedbook keys',
    lineCheck:
      'was ein Linecheck über dieses Schlagzeug in diesem Raum auf diesem Gerät weiß: siehe shedbook line-check',
    picture: 'den Bericht als Seite zeichnen, eine SVG-Datei: jeder Schlag dort, wo er kam',
    json: 'der Bericht als JSON',
  },
  hear: {
    summary: 'aufschreiben, was in einer Aufnahme gespielt wird, ohne Lektion',
    description:
      'Schreibt auf, was gespielt wird: Taktart, Tempo und Feel, den Groove, der sich wiederholt, und was darüber gespielt wird, als Mustertext. Was vorher bekannt ist, hilft: am meisten das Tempo.',
    take: 'eine Aufnahme eines Schlagzeugs oder die MIDI-Datei eines elektronischen',
    tempo: 'ungefähr wie schnell, in Vierteln pro Minute; ohne Angabe wird es gefunden',
    meter: 'wie 3/4 oder 12/8; ohne Angabe wird 4/4 oder 3/4 gefunden',
    feel: 'even, triplet, ein Verhältnis wie 1.8:1 oder "by tempo"; ohne Angabe wird es gefunden',
    title: 'der Titel der Lektion; ohne Angabe der Name der Datei',
    keys: 'welche Tasten das elektronische Schlagzeug sendet, wo sie ungewöhnlich sind: siehe shedbook keys',
    out: 'als Lektion aufheben, etwa als heard.lesson.yaml',
    json: 'das Gehörte als JSON, Takt für Takt',
  },
  keys: {
    summary: 'lernen, welche Tasten ein elektronisches Schlagzeug sendet',
    description:
      'Lernt, welche Tasten ein elektronisches Schlagzeug sendet, aus einer MIDI-Datei, in der jedes Pad der Reihe nach angeschlagen wird. Die üblichen Belegungen sind bekannt: das ist für Schlagzeuge mit anderen.',
    take: 'die MIDI-Datei',
    pads: 'was angeschlagen wurde, der Reihe nach, durch Kommas getrennt; ein Pad mit zwei Zonen steht zweimal: snare,snare,hihat,ride',
    out: 'die Tasten in diese Datei schreiben, für --keys von listen und hear; ohne Angabe ausgeben',
    json: 'die Tasten als JSON',
  },
  lineCheck: {
    summary: 'lernen, wie ein Schlagzeug in seinem Raum auf einem Gerät klingt',
    description:
      'Lernt, wie ein Schlagzeug klingt, aus einer Aufnahme, in der jede Hand und jeder Fuß allein spielt: acht gleichmäßige Schläge einer Stimme, zwei in der Sekunde oder langsamer, so laut wie in der Musik, zwei Sekunden Pause, dann die nächste. Was nachklingt, Ride und Crash, kommt zuletzt. Damit wird ein Bericht genauer; es gilt für dieses Schlagzeug, diesen Raum und dieses Gerät. Nicht lauter als nötig, und mit Gehörschutz.',
    take: 'die Aufnahme',
    limbs:
      'was gespielt wurde, der Reihe nach, durch Kommas getrennt, am besten jede Stimme, die die Lektionen haben: hihat-foot,bass,snare,ride',
    name: 'wie Berichte es nennen, etwa „Keller, Handy“; ohne Angabe der Name der Aufnahme',
    out: 'das Gelernte in diese Datei schreiben, für --line-check von listen; ohne Angabe ausgeben',
    json: 'das Gelernte als JSON',
  },
  film: {
    summary: 'einen Film einer Lektion machen: Seite, Ball, Ton, Untertitel und Kapitel',
    description:
      'Macht einen Film von Übungen: eine Titelkarte, der Groove Hand um Hand und Fuß um Fuß aufgebaut, und jede Übung mit Einzähler, Ball, Zählzeiten und Form. Daneben liegen Untertitel auf Englisch und Deutsch (WebVTT), die Liste der Kapitel und ein Titelbild. Er braucht FFmpeg, ein eigenes Programm, das nicht zu Shedbook gehört.',
    lesson: 'eine Lektionsdatei',
    out: 'der Film: eine Datei, die auf .mp4 oder .webm endet',
    exercise: 'welche Übungen: 3, 1,4 oder 2-5; ohne Angabe alle',
    form: 'Phrasenform; ohne Angabe die, die sonst spielt',
    tempo:
      'Tempi in Vierteln pro Minute, mit Kommas verbunden: Jede Übung wird in jedem gespielt; ohne Angabe das Anfangstempo',
    shape: 'landscape (1920 × 1080) oder portrait (1080 × 1920); ohne Angabe landscape',
    scheme: 'light (hell) oder dark (dunkel); ohne Angabe light',
    rate: 'Bilder in der Sekunde: 30 oder 60; ohne Angabe 30',
    buildUp: 'den Aufbau des Grooves weglassen',
    kit: 'eine SoundFont-2-Datei (.sf2), auf der statt auf dem eingebauten Set gespielt wird',
    performance:
      'ein Video oder eine Aufnahme, in der die Übung gespielt wird; Seite und Ball folgen ihr; 3=DATEI, wo es mehrere Übungen gibt. Von mehreren Aufnahmen einer Übung wird die mit den wenigsten Fehlern gezeigt',
    picture:
      'wo das Bild der Darbietung steht: beside (daneben), above (darüber), corner (in der Ecke) oder none (keines); ohne Angabe daneben im Querformat, darüber im Hochformat',
    sound:
      'was zu einer Darbietung klingt: teacher (die Aufnahme), model (das Set zu denselben Zeiten) oder both (beides); ohne Angabe teacher',
    modelLevel:
      'um wie viel lauter das Vorbild ist als die Aufnahme, wo beide klingen, in Dezibel; ohne Angabe -9',
    speed:
      'wie schnell Darbietungen gezeigt werden, in Prozent, bei gleicher Tonhöhe: 50, oder 100,50 für beides nacheinander; ohne Angabe 100',
    json: 'was gemacht wurde, als JSON',
    after: `
Beispiele:
  shedbook film first.lesson.yaml --exercise 1-4 --form "four and two" --out first.mp4
      Übungen 1 bis 4, jede im Anfangstempo der Lektion
  shedbook film first.lesson.yaml --exercise 3 --tempo 60,80,100 --shape portrait --scheme dark --out third.mp4
      Übung 3 in drei Tempi, für ein Telefon, das aufrecht gehalten wird
  shedbook film first.lesson.yaml --exercise 3 --performance third.mov --sound both --out third.mp4
      die Seite neben der Lehrerin, die Übung 3 spielt, leise darunter das Vorbild`,
  },
  serve: {
    summary: 'das Pult im Browser öffnen',
    description:
      'Stellt das Pult auf diesem Rechner bereit: Lektionen werden im Browser geschrieben, gehört, komponiert und gedruckt. Beim ersten Besuch liegen die Beispiele da. Lektionen und Namen liegen in einer Datei des Ordners oder in der PostgreSQL-Datenbank, die SHEDBOOK_STORE in der Umgebung nennt (postgres://NAME@RECHNER/DATENBANK), für diesen und jeden anderen Befehl.',
    port: 'Port; ohne Angabe 4747, mit 0 irgendein freier',
    host: 'Rechnername, auf den es hört; ohne Angabe nur dieser Rechner, jeder andere verlangt eine Passphrase',
    address:
      'Adresse, unter der andere das Pult erreichen, etwa https://unterricht.example, wo ein Programm mit Zertifikat davor steht; private Links beginnen damit',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
    open: 'keinen Browser öffnen',
  },
  passphrase: {
    summary: 'die Passphrase des Pults setzen',
    description:
      'Setzt die Passphrase, nach der das Pult fragt, wo andere es erreichen, mit --host oder --address. Sie wird zweimal getippt und nicht gezeigt, oder als eine Zeile von der Standardeingabe gelesen. Wer angemeldet war, muss sich neu anmelden.',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
  },
  backup: {
    summary: 'alles, was das Pult aufbewahrt, in eine Datei sichern',
    description:
      'Schreibt Lektionen mit ihrer Geschichte, Namen, Übungshefte und Aufnahmen in eine Datei, liest sie noch einmal und vergleicht jeden Teil mit seiner Prüfsumme. Das Pult darf dabei weiterarbeiten. Die Datei ist ein tar-Archiv mit einer Liste der Prüfsummen, man kann also auch ohne Shedbook hineinsehen. Sie enthält Namen und Aufnahmen: dort aufbewahren, wo sonst niemand sie lesen kann.',
    file: 'Datei, die geschrieben wird, auch anstelle einer gleichen Namens; ohne Angabe shedbook-DATUM.tar',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
    json: 'was gesichert wurde als JSON',
  },
  restore: {
    summary: 'eine Sicherung an die Stelle dessen setzen, was das Pult aufbewahrt',
    description:
      'Liest eine Sicherung ganz und vergleicht jeden Teil mit seiner Prüfsumme, bevor irgendetwas angerührt wird, hebt auf, was jetzt da ist, und setzt dann die Sicherung an seine Stelle, ganz oder gar nicht. Was seitdem gelöscht wurde, bleibt gelöscht; Passphrase und Anmeldungen bleiben, wie sie sind. Das Pult darf dabei laufen: danach seine Seiten neu laden.',
    file: 'die Sicherung',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
    json: 'was zurückgeholt wurde als JSON',
  },
  teacher: {
    summary: 'eine weitere Lehrkraft ans Pult lassen',
    description:
      'Nimmt eine Lehrkraft auf und sagt die Adresse eines Briefs an sie: Er öffnet das Pult einmal, binnen zwei Wochen, damit sie eine eigene Passphrase wählt. Für eine, die schon da ist, gibt es einen neuen Brief, etwa wenn die Passphrase vergessen ist. Ab der zweiten meldet sich jede mit Namen an, auch auf diesem Rechner, und sieht nur ihre eigenen Schüler; was vorher da war, gehört der ersten, der Leitung. Ohne Namen wird gesagt, wer da ist.',
    name: 'Name der Lehrkraft',
    address: 'Adresse, unter der Lehrkräfte das Pult erreichen; ohne Angabe die dieses Rechners',
    data: 'wo Lektionen liegen; ohne Angabe im Datenordner des Benutzers',
  },
  journal: {
    summary: 'sagen, wer was mit dem getan hat, was das Pult aufbewahrt',
    description:
      'Sagt, wer sich angemeldet, einen Link gemacht, etwas gehört, gesichert oder gelöscht hat und wann, das Letzte zuerst; ein Jahr lang. Nichts von dem, was gesagt, gespielt oder geschrieben wurde, steht darin, und kein Geheimnis.',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
    count: 'wie viele Einträge; ohne Angabe 50',
    json: 'die Einträge als JSON',
  },
  doctor: {
    summary: 'nachsehen, ob heil ist, was das Pult aufbewahrt',
    description:
      'Sieht die Lektionen und Namen an, die das Pult aufbewahrt, und ändert nichts: sagt, ob die Datei heil ist, was davon lesbar ist, wie viel Platz da ist und was zu tun ist. Endet mit 1, wo etwas beschädigt ist.',
    data: 'wo Lektionen aufbewahrt werden; ohne Angabe im Datenordner',
    save: 'alles Lesbare als Dateien in diesem Ordner sichern',
    json: 'was gefunden wurde als JSON',
  },
});
