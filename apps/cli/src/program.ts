/**
 * The `shedbook` command: subcommands, their options and their help.
 *
 * Conventions: a command's code is loaded when it is asked for, so that help and `check` wait for no engraver, kit or
 * database. The exit status is 0 only when what was asked is done, 2 for bad input, 70 for a fault of our own.
 */

import { LESSON_TEMPI, PHRASE_FORMS, type PhraseForm } from '@shedbook/core';
import { InputError } from '@shedbook/host';
import { CLI, LANGUAGE_TAGS, type LanguageTag, pickLanguage } from '@shedbook/words';
import { Command, CommanderError } from 'commander';
import type { LoadDesk } from './commands/serve.ts';
import { readChoice, refused, refuseOption } from './options.ts';
import type { Speaker, Terminal } from './terminal.ts';

/** Exit status for bad input. */
export const BAD_INPUT = 2;

/** Exit status for a fault of the program itself (sysexits.h: EX_SOFTWARE). */
export const INTERNAL_ERROR = 70;

const INTRO = `Lessons for the drum set: from one text file to a printed sheet, standard files, sound and practice.

A lesson is a file such as first.lesson.yaml; five lines are enough:

  title: First swing
  tempo: 80
  vocabulary: [..., ..x, x.., x.x]
  exercises:
    - x.. ..x x.x ...

Beats are separated by spaces; inside a beat there is one character a slot: x a stroke, X an accent,
g a ghost note, . nothing.`;

const BUILD_HELP = `
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

Mind the volume: set it on quiet headphones first, and take breaks for your ears.`;

const COMPOSE_HELP = `
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
  shedbook compose first.lesson.yaml --phrase call-and-answer --bars 4 --count 12
      twelve phrases of four bars: two that ask, and two that begin like them and come to rest
  shedbook compose first.lesson.yaml --weak "..x ..." --count 12 --out weak.lesson.yaml
      twelve bars that all lead from a last triplet into a rest`;

const ARRANGE_HELP = `
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

No hand is asked for more than one hand is published to keep up at the goal tempo; what cannot be played is said.`;

/** Reads an option that is a whole number in a range. */
function whole(option: string, least: number, most: number) {
  return (text: string): number => {
    const value = Number(text);
    if (Number.isInteger(value) && value >= least && value <= most) return value;
    return refuseOption(option, text, (expected) => expected.whole({ least, most }));
  };
}

/** Reads an option that is a share of 1. */
function share(option: string) {
  return (text: string): number => {
    const value = Number(text);
    if (text.trim() !== '' && value >= 0 && value <= 1) return value;
    return refuseOption(option, text, (expected) => expected.share);
  };
}

function phraseForm(text: string): PhraseForm {
  return readChoice('phrase', text, PHRASE_FORMS);
}

/** Reads an option that lists numbers of exercises. */
function numbers(option: string) {
  return (text: string): readonly number[] => {
    const read = text.split(',').map(Number);
    if (read.every((number) => Number.isInteger(number) && number >= 1)) return read;
    return refuseOption(option, text, (expected) => expected.keep);
  };
}

function exerciseNumber(text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= 1) return value;
  throw refused('exercise', `"${text}"`, (expected) => expected.exerciseNumber);
}

/** Gives what a command speaks to, in the language that was asked for. */
type Speak = () => Speaker;

function addCheck(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('check')
    .summary('say what is wrong with a lesson, all at once')
    .description('Checks lesson files. Every problem is said at once, as file:line:column.')
    .argument('<lesson...>', 'lesson files')
    .option('--json', 'problems as JSON')
    .action(async (paths: string[], options: { json?: boolean }) => {
      const { check } = await import('./commands/check.ts');
      done(await check(paths, options.json ?? false, speaker()));
    });
}

function addBuild(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('build')
    .summary('make the sheet, standard files and sound of a lesson')
    .description(
      'Makes everything that a lesson says: the printed sheet, MIDI, MusicXML and, where asked, sound.',
    )
    .argument('<lesson>', 'a lesson file')
    .requiredOption('--out <folder>', 'where to put what is made')
    .option('--audio <format>', 'record every exercise: wav, mp3, ogg or flac')
    .option('--tempo <bpm>', 'quarter notes a minute; the start tempo of the lesson when left out')
    .option(
      '--form <name>',
      'phrase form for sound and MIDI: loop, "four and two", time, or one of the lesson\'s own',
    )
    .option('--layers <n>', 'how many layers of the groove play, or "each" for a recording of every stage')
    .option('--mute <voices>', 'voices that are left out, joined by commas, for the student to play')
    .option('--exercise <numbers>', 'only these exercises in sound and standard files: 3, 1,4 or 2-5')
    .option('--paper <size>', 'A4 or Letter, whatever the lesson says')
    .option('--loudness <lufs>', 'loudness of recordings in LUFS; -16 when left out')
    .option('--kit <file>', 'a SoundFont 2 file (.sf2) to play on instead of the built-in kit')
    .option('--click <beats>', 'a click that plays along: all, or beats such as 2,4')
    .option('--subdivide <slots>', 'quiet clicks inside the beat: 2, 3, 4 or 6 slots')
    .option('--gap <bars>', 'click for some bars, then silence for some, over and over: 2/2')
    .option('--dry', 'recordings without the room')
    .option('--pack', 'a take-home pack: the practice page of the lesson, as a folder and as practice.zip')
    .option('--json', 'what was made as JSON')
    .addHelpText('after', BUILD_HELP)
    .action(async (lesson: string, options) => {
      const { build } = await import('./commands/build.ts');
      done(await build(lesson, options, speaker()));
    });
}

function addCompose(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('compose')
    .summary('write a graded page of exercises from the vocabulary')
    .description('Composes exercises: no two alike, every move between cells met, each a small step harder.')
    .argument('<lesson>', 'a lesson file with a vocabulary')
    .option('--section <n>', 'the section of a divided lesson that they are for', whole('section', 1, 1000))
    .option('--count <n>', 'how many exercises; what the lesson says, else 24', whole('count', 1, 400))
    .option('--seed <s>', 'another seed gives another page; the same seed always gives the same')
    .option('--keep <numbers>', 'exercises that stay where they are, joined by commas', numbers('keep'))
    .option('--bars <n>', 'bars in an exercise: 1 to 8', whole('bars', 1, 8))
    .option(
      '--idiom <share>',
      'how far figures of the trade are quoted: 0 every move counts, 1 as its themes',
      share('idiom'),
    )
    .option('--headings', 'name the first exercise of each block after its figure')
    .option('--with <voice>', 'two limbs in dialogue: the voice that answers, such as bass')
    .option(
      '--phrase <form>',
      'phrases: call-and-answer in 2, 4 or 8 bars, aaba or sentence in 4 or 8',
      phraseForm,
    )
    .option('--questions', 'short for --phrase call-and-answer')
    .option('--weak <move>', 'a page for one move between cells, such as "..x ..."')
    .option('--review <lessons...>', 'a page that mixes the exercises of these lessons')
    .option('--variations <n>', 'variations of one exercise of the lesson', whole('variations', 1, 10_000))
    .option('--easier <n>', 'bars a step easier than an exercise', whole('easier', 1, 10_000))
    .option('--harder <n>', 'bars a step harder than an exercise', whole('harder', 1, 10_000))
    .option('--like <n>', 'bars like an exercise, and as hard', whole('like', 1, 10_000))
    .option('--goal <n>', 'the shortest page that leads to an exercise', whole('goal', 1, 10_000))
    .option(
      '--has <numbers>',
      'with --goal: exercises that the student has, joined by commas',
      numbers('has'),
    )
    .option('--out <file>', 'write into this file instead of the lesson')
    .option('--explain', 'print each bar with its difficulty')
    .option('--json', 'the report as JSON')
    .addHelpText('after', COMPOSE_HELP)
    .action(async (lesson: string, options) => {
      const { composeCommand } = await import('./commands/compose.ts');
      done(await composeCommand({ lesson, ...options }, speaker()));
    });
}

function addArrange(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('arrange')
    .summary('share exercises out, take them over the kit, give them accents, hands or a fill')
    .description(
      'Makes a second pass over exercises that are there, and adds what it makes behind them: nothing is overwritten. ' +
        'Several passes are made one after another.',
    )
    .argument('<lesson>', 'a lesson file with exercises')
    .option('--share <rule>', 'share the rhythm out between its voice and a lower one')
    .option('--lower <voice>', 'the lower voice of --share; bass when left out')
    .option('--kit <rule>', 'take the rhythm over snare drum and toms')
    .option('--accents <rule>', 'accent some strokes')
    .option('--hands <rule>', 'say which hand plays which stroke')
    .option('--fill <beats>', 'end a phrase in a fill of 1 or 2 beats', whole('fill', 1, 2))
    .option('--phrase <bars>', 'bars of that phrase; 4 when left out', whole('phrase', 1, 16))
    .option('--exercise <numbers>', 'only these exercises: 3, 1,4 or 2-5')
    .option('--seed <s>', 'another seed gives other free accents and fills; the same always gives the same')
    .option(
      '--out <file>',
      'write the new exercises alone into this file instead of adding them to the lesson',
    )
    .option('--explain', 'print each exercise with what was done and its difficulty')
    .option('--json', 'the exercises, what was done and what could not be, as JSON')
    .addHelpText('after', ARRANGE_HELP)
    .action(async (lesson: string, options) => {
      const { arrangeCommand } = await import('./commands/arrange.ts');
      done(await arrangeCommand({ lesson, ...options }, speaker()));
    });
}

function addWhy(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('why')
    .summary('say what makes an exercise hard, or harder than another')
    .description("Explains the difficulty of an exercise over the lesson's groove, part by part.")
    .argument('<lesson>', 'a lesson file')
    .argument('<exercise>', 'its number', exerciseNumber)
    .argument('[other]', 'number of the exercise that it is compared with', exerciseNumber)
    .option('--json', 'the parts as JSON')
    .action(async (lesson: string, first: number, other: number | undefined, options: { json?: boolean }) => {
      const { why } = await import('./commands/why.ts');
      done(
        await why(lesson, other === undefined ? [first] : [first, other], options.json ?? false, speaker()),
      );
    });
}

function addListen(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('listen')
    .summary('say what was really played in a recording of an exercise')
    .description(
      'Listens to a recording of an exercise and says, limb by limb, what was played, when and how loud. ' +
        'WAV, FLAC, MP3, Ogg and WebM are read directly, M4A and phone videos through FFmpeg where it is installed.',
    )
    .argument('<take>', 'a recording, or the MIDI file of an electronic kit')
    .requiredOption('--lesson <file>', 'the lesson that the exercise is from')
    .requiredOption('--exercise <n>', 'the exercise that was played', exerciseNumber)
    .option('--form <name>', 'the phrase form that was played; loop when left out')
    .option(
      '--tempo <bpm>',
      'about how fast, in quarter notes a minute',
      whole('tempo', LESSON_TEMPI.least, LESSON_TEMPI.most),
    )
    .option(
      '--latency <ms>',
      'the recording began with the click, which sounds this much later in it: measure against the click',
      whole('latency', 0, 2000),
    )
    .option('--level <level>', 'what is worth a word: to a beginner, intermediate or advanced student')
    .option(
      '--plays <voices>',
      'voices that this student plays, joined by commas; all that are written when left out',
    )
    .option(
      '--playing <file>',
      'a recording of what a loudspeaker played during the take, from its first sample on: it is taken out of it',
    )
    .option('--keys <file>', 'which keys the electronic kit sends, where they are unusual: see shedbook keys')
    .option('--picture <file>', 'draw the report as a page, an SVG file: every stroke at its displacement')
    .option('--json', 'the report as JSON')
    .action(async (take: string, options) => {
      const { listenCommand } = await import('./commands/listen.ts');
      done(await listenCommand({ take, ...options }, speaker()));
    });
}

function addHear(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('hear')
    .summary('write down what is played in a recording, without a lesson')
    .description(
      'Writes down what is played: meter, tempo and feel, the groove that repeats, and what is played over it, as ' +
        'pattern text. What is known beforehand helps: the tempo most.',
    )
    .argument('<take>', 'a recording of a drum set, or the MIDI file of an electronic kit')
    .option(
      '--tempo <bpm>',
      'about how fast, in quarter notes a minute; found when left out',
      whole('tempo', LESSON_TEMPI.least, LESSON_TEMPI.most),
    )
    .option('--meter <meter>', 'such as 3/4 or 12/8; 4/4 or 3/4 is found when left out')
    .option('--feel <feel>', 'even, triplet, a ratio such as 1.8:1, or "by tempo"; found when left out')
    .option('--title <title>', 'the title of the lesson; the name of the file when left out')
    .option('--keys <file>', 'which keys the electronic kit sends, where they are unusual: see shedbook keys')
    .option('--out <file>', 'keep it as a lesson, such as heard.lesson.yaml')
    .option('--json', 'what was heard as JSON, bar by bar')
    .action(async (take: string, options) => {
      const { hearCommand } = await import('./commands/hear.ts');
      done(await hearCommand({ take, ...options }, speaker()));
    });
}

function addKeys(program: Command, speaker: Speak, done: (status: number) => void): void {
  program
    .command('keys')
    .summary('learn which keys an electronic kit sends')
    .description(
      'Learns which keys an electronic kit sends, from a MIDI file in which each pad is struck in turn. The usual ' +
        'layouts are known: this is for kits that send others.',
    )
    .argument('<take>', 'the MIDI file')
    .requiredOption(
      '--pads <voices>',
      'what was struck, in order, joined by commas; a pad with two zones stands twice: snare,snare,hihat,ride',
    )
    .option('--out <file>', 'write the keys into this file, for --keys of listen; print them when left out')
    .option('--json', 'the keys as JSON')
    .action(async (take: string, options) => {
      const { keysCommand } = await import('./commands/keys.ts');
      done(await keysCommand({ take, ...options }, speaker()));
    });
}

function addServe(program: Command, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('serve')
    .summary('open the desk in the browser')
    .description(
      'Serves the desk on this computer: lessons are written, heard, composed and printed in the browser. ' +
        'The first visit finds the demo lessons there.',
    )
    .option('--port <n>', 'port; 4747 when left out, 0 for any free one', whole('port', 0, 65_535))
    .option('--host <address>', 'address to listen on; only this computer when left out')
    .option('--data <folder>', "where lessons are kept; the user's data folder when left out")
    .option('--no-open', 'do not open a browser')
    .action(async (options) => {
      const { serveUntilStopped } = await import('./commands/serve.ts');
      await serveUntilStopped(options, speaker(), loadDesk);
    });
}

function languageTag(text: string): LanguageTag {
  return readChoice('language', text, LANGUAGE_TAGS);
}

/** What a person runs the program with. */
export interface Running {
  /** Gives the server that `serve` starts. */
  readonly loadDesk: LoadDesk;
  /** The language of the environment, as POSIX has it, e.g. `de_AT.UTF-8`. */
  readonly locale: string;
}

/** The whole command line; `done` is told the exit status of what ran. */
function createProgram(
  terminal: Terminal,
  speaker: (program: Command) => Speaker,
  done: (status: number) => void,
  loadDesk: LoadDesk,
): Command {
  const program = new Command('shedbook')
    .description(INTRO)
    .version('0.1.0')
    .option('--language <code>', 'en or de; the language of the environment when left out', languageTag)
    .showHelpAfterError('(shedbook --help says how it is used)')
    .configureOutput({
      writeOut: (text) => terminal.say(text.trimEnd()),
      writeErr: (text) => terminal.warn(text.trimEnd()),
    })
    .exitOverride();
  const speak = () => speaker(program);
  addCheck(program, speak, done);
  addBuild(program, speak, done);
  addCompose(program, speak, done);
  addArrange(program, speak, done);
  addWhy(program, speak, done);
  addListen(program, speak, done);
  addHear(program, speak, done);
  addKeys(program, speak, done);
  addServe(program, speak, loadDesk);
  return program;
}

/** The language of an environment: that of its locale (POSIX.1-2017, section 8.2), else English. */
function localeLanguage(locale: string): LanguageTag {
  return pickLanguage([locale.replace(/[_.@].*$/, '')]);
}

function statusOf(error: unknown, terminal: Speaker): number {
  terminal.progress(null);
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : BAD_INPUT;
  if (error instanceof InputError) {
    terminal.warn(error.say(terminal.catalogue));
    return BAD_INPUT;
  }
  const message = error instanceof Error ? error.message : String(error);
  const what = message.replace(/^Internal error: /, '');
  terminal.warn(terminal.catalogue.words.internal({ what }));
  return INTERNAL_ERROR;
}

/** Where nobody joined a server to the command line. */
const noDesk: LoadDesk = () => Promise.reject(new RangeError('Internal error: no server was joined'));

/**
 * Runs the command line, in English where nobody says otherwise.
 * @returns the exit status; never throws.
 */
export async function runProgram(
  args: readonly string[],
  terminal: Terminal,
  { loadDesk = noDesk, locale = '' }: Partial<Running> = {},
): Promise<number> {
  let status = 0;
  const done = (of: number) => {
    status = of;
  };
  const speaker = (program: Command): Speaker => {
    const { language = localeLanguage(locale) } = program.opts<{ language?: LanguageTag }>();
    return { ...terminal, catalogue: CLI[language] };
  };
  const program = createProgram(terminal, speaker, done, loadDesk);
  try {
    await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    status = statusOf(error, speaker(program));
  }
  return status;
}
