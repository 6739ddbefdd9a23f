/** How the command line is used, in English. */

/** The texts of `--help`, by command: each of its arguments and options by its name. */
export const help = {
  intro: `Lessons for the drum set: from one text file to a printed sheet, standard files, sound and practice.

A lesson is a file such as first.lesson.yaml; five lines are enough:

  title: First swing
  tempo: 80
  vocabulary: [..., ..x, x.., x.x]
  exercises:
    - x.. ..x x.x ...

Beats are separated by spaces; inside a beat there is one character a place: x a stroke, X an accent, \
g a ghost note, . nothing.`,
  language: 'en or de; the language of the environment when left out',
  afterError: '(shedbook --help says how it is used)',
  ofVersion: 'say the version',
  ofHelp: 'say how it is used',
  helpCommand: 'say how a command is used',
  titles: {
    usage: 'Usage:',
    arguments: 'Arguments:',
    options: 'Options:',
    commands: 'Commands:',
  },
  fresh: {
    summary: 'start a lesson from a groove',
    description:
      'Writes a lesson that starts from one of our grooves, with a vocabulary and a first bar to go on from. Without a groove it says which there are.',
    groove: 'name of a groove',
    title: 'title of the lesson; the name of the groove when left out',
    out: 'file to write; the text is said when left out',
  },
  check: {
    summary: 'say what is wrong with a lesson, all at once',
    description: 'Checks lesson files. Every problem is said at once, as file:line:column.',
    lesson: 'lesson files and book files',
    json: 'problems as JSON',
  },
  build: {
    summary: 'make the sheet, standard files and sound of a lesson',
    description:
      'Makes everything that a lesson says: the printed sheet, MIDI, MusicXML and, where asked, sound.',
    lesson: 'a lesson file, or a book file (.book.yaml), of which one PDF is made',
    out: 'where to put what is made',
    audio: 'record every exercise: wav, mp3, ogg or flac',
    tempo: 'quarter notes a minute; the start tempo of the lesson when left out',
    form: 'phrase form for sound and MIDI: loop, "four and two", time, or one of the lesson\'s own',
    layers: 'how many layers of the groove play, or "each" for a recording of every stage',
    mute: 'voices that are left out, joined by commas, for the student to play',
    exercise: 'only these exercises in sound and standard files: 3, 1,4 or 2-5',
    paper: 'A4, Letter, A5 or tablet, whatever the lesson says',
    loudness: 'loudness of recordings in LUFS; -16 when left out, softer where accents would be turned down',
    kit: 'a SoundFont 2 file (.sf2) to play on instead of the built-in kit',
    click: 'a click that plays along: all, or beats such as 2,4',
    subdivide: 'quiet clicks inside the beat: 2, 3, 4 or 6 a beat',
    gap: 'click for some bars, then silence for some, over and over: 2/2',
    countAloud: 'a voice counts on every click, the count-in too; on every beat where no click is asked for',
    dry: 'recordings without the room',
    pack: 'a take-home pack: the practice page of the lesson, as a folder and as practice.zip',
    performance:
      'with --pack: a video or a recording of the exercise being played, which the pack demonstrates it with: the ball follows the playing, at full speed and slowed down; 3=FILE where there are several exercises. It needs FFmpeg',
    films: 'with --pack: a film of each exercise, over its performance where there is one. It needs FFmpeg',
    json: 'what was made as JSON',
    after: `
Examples:
  shedbook build first.lesson.yaml --out first
      sheet.pdf, its pages as SVG, and a MIDI and MusicXML file for the sheet and for each exercise
  shedbook build first.lesson.yaml --out first --audio mp3 --form "four and two" --tempo 96
      and a recording of every exercise in that form
  shedbook build first.lesson.yaml --out first --audio wav --layers each --exercise 1
      exercise 1 built up layer by layer
  shedbook build first.lesson.yaml --out first --audio mp3 --mute ride
      everything but the ride, for the student to play it
  shedbook build first.lesson.yaml --out first --audio mp3 --mute ride --click 2,4 --gap 2/2
      the same with a click on 2 and 4 that drops out every other two bars
  shedbook build first.lesson.yaml --out first --pack
      first/practice for any web host, and first/practice.zip to send: students practise in the browser
  shedbook build first.lesson.yaml --out first --pack --performance 3=third.mov
      the same, and on exercise 3 your own playing, which students hear as fast as you played and half as fast

Mind the volume: set it on quiet headphones first, and take breaks for your ears.`,
  },
  compose: {
    summary: 'write a graded page of exercises from the vocabulary',
    description: 'Composes exercises: no two alike, every move between cells met, each a small step harder.',
    lesson: 'a lesson file with a vocabulary',
    section: 'the section of a divided lesson that they are for',
    count: 'how many exercises; what the lesson says, else 24',
    seed: 'another seed gives another page; the same seed always gives the same',
    keep: 'exercises that stay where they are, joined by commas',
    bars: 'bars in an exercise: 1 to 8',
    idiom: 'how far figures of the trade are quoted: 0 every move counts, 1 as its themes',
    headings: 'name the first exercise of each block after its figure',
    with: 'two limbs in dialogue: the voice that answers, such as bass',
    phrase: 'phrases: call-and-answer in 2, 4 or 8 bars, aaba or sentence in 4 or 8',
    questions: 'short for --phrase call-and-answer',
    weak: 'a page for one move between cells, such as "..x ..."',
    review: 'a page that mixes the exercises of these lessons',
    variations: 'propose variations of one exercise; nothing is written without --put',
    easier: 'propose bars a step easier than an exercise, and say what changes',
    harder: 'propose bars a step harder than an exercise',
    like: 'propose bars like an exercise, and as hard',
    goal: 'propose the shortest page that leads to an exercise',
    put: 'put what is proposed beside its exercise: behind it, what leads to it before it',
    has: 'with --goal: exercises that the student has, joined by commas',
    term: 'a term of so many pages: cells come little by little, and every move returns at growing distances',
    out: 'write into this file instead of the lesson',
    explain: 'print each bar with its difficulty',
    json: 'the report as JSON',
    after: `
Examples:
  shedbook compose first.lesson.yaml --count 24
      24 exercises from the lesson's vocabulary, written into the lesson; comments stay
  shedbook compose first.lesson.yaml --count 24 --seed 7 --out second.lesson.yaml
      another page, into another file
  shedbook compose first.lesson.yaml --keep 1,2 --explain
      1 and 2 stay, the rest is composed round them; says how hard each bar is
  shedbook compose first.lesson.yaml --idiom 1 --headings
      figures that everybody begins with as themes, each block under the name of its figure
  shedbook compose first.lesson.yaml --with bass --out dialogue.lesson.yaml
      the comping voice and the bass drum share the vocabulary's rhythms out
  shedbook compose first.lesson.yaml --term 6 --count 16 --out term.lesson.yaml
      six pages of sixteen exercises, each a section of the lesson
  shedbook compose first.lesson.yaml --phrase call-and-answer --bars 4 --count 12
      twelve phrases of four bars: two that ask, and two that begin like them and come to rest
  shedbook compose first.lesson.yaml --weak "..x ..." --count 12 --out weak.lesson.yaml
      twelve bars that all lead from a last triplet into a rest`,
  },
  prepare: {
    summary: 'write what comes before a section: its subdivision, counted and clapped',
    description:
      'Writes a section of clapped exercises before a section, made from its meter and feel, with a click that thins out until it is gone; the section names it in `before`, and practice plans put it first. All else stays as it is.',
    lesson: 'a lesson file with exercises',
    section: 'the section of a divided lesson that it is for',
    out: 'write the lesson with it into this file instead',
  },
  arrange: {
    summary: 'share exercises out, take them over the kit, give them accents, hands or a fill',
    description:
      'Makes a second pass over exercises that are there, and adds what it makes behind them: nothing is overwritten. Several passes are made one after another.',
    lesson: 'a lesson file with exercises',
    share: 'share the rhythm out between its voice and a lower one',
    lower: 'the lower voice of --share; bass when left out',
    kit: 'take the rhythm over snare drum and toms',
    accents: 'accent some strokes',
    hands: 'say which hand plays which stroke',
    fill: 'end a phrase in a fill of 1 or 2 beats',
    phrase: 'bars of that phrase; 4 when left out',
    exercise: 'only these exercises: 3, 1,4 or 2-5',
    seed: 'another seed gives other free accents and fills; the same always gives the same',
    out: 'write the new exercises alone into this file instead of adding them to the lesson',
    explain: 'print each exercise with what was done and its difficulty',
    json: 'the exercises, what was done and what could not be, as JSON',
    after: `
Rules:
  --share    beats-below, long-below, by-turns, accents-below
  --kit      by-beat, by-stroke, down-the-bar, accents-on-toms
  --accents  on-the-beat, off-the-beat, first-of-group, last-of-group, every-third, free
  --hands    by-turns, by-place, doubles, paradiddle

Examples:
  shedbook arrange first.lesson.yaml --share long-below --exercise 1-8 --explain
      exercises 1 to 8 once more, long strokes on the bass drum, added behind what is there
  shedbook arrange first.lesson.yaml --accents first-of-group --hands by-turns --out hands.lesson.yaml
      accents and hands for the whole page, into another file
  shedbook arrange first.lesson.yaml --fill 2 --phrase 4 --seed 3
      every exercise as four bars that end in a fill of two beats

No hand is asked for more than one hand is published to keep up at the goal tempo; what cannot be played is said.`,
  },
  weights: {
    summary: 'say what students’ takes tell of the weights of difficulty',
    description:
      'Fits the weights of difficulty to what students played clean and what not, from today’s weights on, and shows each with its error. Nothing is written without --accept.',
    lesson: 'a lesson file',
    log: 'a practice log; once for each student',
    accept: 'write the fitted weights into the lesson',
    json: 'the fit as JSON',
  },
  why: {
    summary: 'say what makes an exercise hard, or harder than another',
    description: "Explains the difficulty of an exercise over the lesson's groove, part by part.",
    lesson: 'a lesson file',
    exercise: 'its number',
    other: 'number of the exercise that it is compared with',
    json: 'the parts as JSON',
  },
  listen: {
    summary: 'say what was really played in a recording of an exercise',
    description:
      'Listens to a recording of an exercise and says, limb by limb, what was played, when and how loud. WAV, FLAC, MP3, Ogg and WebM are read directly, M4A and phone videos through FFmpeg where it is installed.',
    take: 'a recording, or the MIDI file of an electronic kit',
    lesson: 'the lesson that the exercise is from',
    exercise: 'the exercise that was played; whichever was played, or the groove alone, when left out',
    form: 'the phrase form that was played; when left out, loop, or another in which nothing is wrong',
    tempo: 'about how fast, in quarter notes a minute',
    latency:
      'the recording began with the click, which sounds this much later in it: measure against the click',
    level: 'what is worth a word: to a beginner, intermediate or advanced student',
    plays: 'voices that this student plays, joined by commas; all that are written when left out',
    on: 'what was played on: kit, or pad for a practice pad or a table, where any short tap is a stroke of the exercise; kit when left out',
    playing:
      'a recording of what a loudspeaker played during the take, from its first sample on: it is taken out of it',
    keys: 'which keys the electronic kit sends, where they are unusual: see shedbook keys',
    lineCheck: 'what a line check told of this kit in this room on this device: see shedbook line-check',
    picture: 'draw the report as a page, an SVG file: every stroke at its displacement',
    json: 'the report as JSON',
  },
  hear: {
    summary: 'write down what is played in a recording, without a lesson',
    description:
      'Writes down what is played: meter, tempo and feel, the groove that repeats, and what is played over it, as pattern text. What is known beforehand helps: the tempo most.',
    take: 'a recording of a drum set, or the MIDI file of an electronic kit',
    tempo: 'about how fast, in quarter notes a minute; found when left out',
    meter: 'such as 3/4 or 12/8; 4/4 or 3/4 is found when left out',
    feel: 'even, triplet, a ratio such as 1.8:1, or "by tempo"; found when left out',
    title: 'the title of the lesson; the name of the file when left out',
    keys: 'which keys the electronic kit sends, where they are unusual: see shedbook keys',
    out: 'keep it as a lesson, such as heard.lesson.yaml',
    json: 'what was heard as JSON, bar by bar',
  },
  keys: {
    summary: 'learn which keys an electronic kit sends',
    description:
      'Learns which keys an electronic kit sends, from a MIDI file in which each pad is struck in turn. The usual layouts are known: this is for kits that send others.',
    take: 'the MIDI file',
    pads: 'what was struck, in order, joined by commas; a pad with two zones stands twice: snare,snare,hihat,ride',
    out: 'write the keys into this file, for --keys of listen and hear; print them when left out',
    json: 'the keys as JSON',
  },
  lineCheck: {
    summary: 'learn how a kit sounds in its room on one device',
    description:
      'Learns how a kit sounds from a recording in which each limb plays alone: eight even strokes of one voice, two a second or slower, as loud as in the music, a rest of two seconds, then the next. What rings, ride and crash, comes last. A report is sharper with it; it holds for that kit, room and device. Not louder than need be, and with ears protected.',
    take: 'the recording',
    limbs:
      'what was played, in order, joined by commas, best every voice that the lessons have: hihat-foot,bass,snare,ride',
    name: 'what reports call it, such as "Cellar, phone"; the name of the recording when left out',
    out: 'write what was learnt into this file, for --line-check of listen; print it when left out',
    json: 'what was learnt as JSON',
  },
  film: {
    summary: 'make a film of a lesson: page, ball, sound, captions and chapters',
    description:
      'Makes a film of exercises: a title card, the groove built up limb by limb, and each exercise with count-in, ball, counts and form. Beside it lie captions in English and German (WebVTT), the list of chapters and a cover. It needs FFmpeg, a program of its own that does not come with Shedbook.',
    lesson: 'a lesson file',
    out: 'the film: a file that ends in .mp4 or .webm',
    exercise: 'which exercises: 3, 1,4 or 2-5; all when left out',
    form: 'phrase form; the one that plays when left out',
    tempo:
      'tempi in quarter notes a minute, joined by commas: each exercise is played at each; the start tempo when left out',
    shape: 'landscape (1920 × 1080) or portrait (1080 × 1920); landscape when left out',
    scheme: 'light or dark; light when left out',
    rate: 'frames a second: 30 or 60; 30 when left out',
    buildUp: 'leave out the groove that is built up limb by limb',
    kit: 'a SoundFont 2 file (.sf2) to play on instead of the built-in kit',
    performance:
      'a video or recording of the exercise being played, which page and ball follow; 3=FILE where there are several exercises. Of several takes of one exercise the one with the fewest faults is shown',
    picture:
      'where the picture of the performance stands: beside, above, corner or none; beside in landscape and above in portrait when left out',
    sound:
      'what is heard over a performance: teacher, model (the kit at the same moments) or both; teacher when left out',
    modelLevel:
      'how much louder the model is than the teacher where both are heard, in decibels; -9 when left out',
    speed:
      'how fast performances are shown, in percent, of the same pitch: 50, or 100,50 for one after the other; 100 when left out',
    json: 'what was made as JSON',
    after: `
Examples:
  shedbook film first.lesson.yaml --exercise 1-4 --form "four and two" --out first.mp4
      exercises 1 to 4, each at the start tempo of the lesson
  shedbook film first.lesson.yaml --exercise 3 --tempo 60,80,100 --shape portrait --scheme dark --out third.mp4
      exercise 3 at three tempi, for a telephone held upright
  shedbook film first.lesson.yaml --exercise 3 --performance third.mov --sound both --out third.mp4
      the page beside the teacher who plays exercise 3, the model softly under it`,
  },
  serve: {
    summary: 'open the desk in the browser',
    description:
      'Serves the desk on this computer: lessons are written, heard, composed and printed in the browser. The first visit finds the demo lessons there. Lessons and students lie in a file of the folder, or in the PostgreSQL database that SHEDBOOK_STORE names in the environment (postgres://USER@HOST/DATABASE), for this and every other command.',
    port: 'port; 4747 when left out, 0 for any free one',
    host: 'host to listen on; only this computer when left out, any other asks for a passphrase',
    address:
      'address by which others reach the desk, such as https://lessons.example, where a program with a certificate stands before it; private links begin with it',
    data: "where lessons are kept; the user's data folder when left out",
    open: 'do not open a browser',
  },
  passphrase: {
    summary: 'set the passphrase of the desk',
    description:
      'Sets the passphrase that the desk asks for where others reach it, by --host or --address. It is typed twice and not shown, or read as one line from standard input. Whoever had signed in has to do so again.',
    data: "where lessons are kept; the user's data folder when left out",
  },
  backup: {
    summary: 'back up everything that the desk keeps into one file',
    description:
      'Writes lessons with their history, students, practice and recordings into one file, reads it again and compares every part with its sum. The desk may go on working. The file is a tar archive with a list of sums, so it can be looked into without Shedbook. It holds names and recordings: keep it where only you can read it.',
    file: 'file to write, in place of one with this name; shedbook-DATE.tar when left out',
    data: "where lessons are kept; the user's data folder when left out",
    json: 'what was backed up as JSON',
  },
  restore: {
    summary: 'put a backup in the place of what the desk keeps',
    description:
      'Reads a backup whole and compares every part with its sum before anything is touched, keeps what is there now in a file beside it, and then puts the backup in its place, all or nothing. What was erased since stays erased; passphrase and sign-ins stay as they are. The desk may be running: load its pages again afterwards.',
    file: 'the backup',
    data: "where lessons are kept; the user's data folder when left out",
    json: 'what was restored as JSON',
  },
  teacher: {
    summary: 'let another teacher come to the desk',
    description:
      'Adds a teacher and tells the address of a letter to send them: it opens the desk once, within two weeks, to choose a passphrase of their own. For one who is there already it makes another letter, e.g. where the passphrase was forgotten. From the second teacher on each signs in by name, also on this computer, and sees their own students alone; what was there before is the first teacher’s, who is the head. Without a name it lists who is there.',
    name: 'what the teacher is called',
    address: 'address by which teachers reach the desk; that of this computer when left out',
    data: "where lessons are kept; the user's data folder when left out",
  },
  journal: {
    summary: 'tell who did what with what the desk keeps',
    description:
      'Tells who signed in, made a link, heard, exported or erased something, and when, the last first; a year of it. Nothing of what was said, played or written is in it, and no secret.',
    data: "where lessons are kept; the user's data folder when left out",
    count: 'how many entries; 50 when left out',
    json: 'the entries as JSON',
  },
  doctor: {
    summary: 'look whether what the desk keeps is whole',
    description:
      'Looks at the lessons and students that the desk keeps and changes nothing: says whether the file is whole, what of it can be read, how much room there is, and what to do. Ends with 1 where something is damaged.',
    data: "where lessons are kept; the user's data folder when left out",
    save: 'save everything that can be read as files in this folder',
    json: 'what was found as JSON',
  },
} as const;
