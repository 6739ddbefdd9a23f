/**
 * The `shedbook` command: subcommands, their options and their help.
 *
 * Conventions: a command's code is loaded when it is asked for, so that help and `check` wait for no engraver, kit or
 * database. The exit status is 0 only when what was asked is done, 2 for bad input, 70 for a fault of our own.
 */

import { LESSON_TEMPI, PHRASE_FORMS, type PhraseForm, readExerciseLabel } from '@shedbook/core';
import { InputError } from '@shedbook/host';
import { CLI, type CliWords, LANGUAGE_TAGS, type LanguageTag, pickLanguage } from '@shedbook/words';
import { type Command, CommanderError } from 'commander';
import type { LoadDesk } from './commands/serve.ts';
import { readChoice, refused, refuseOption } from './options.ts';
import { SpokenCommand } from './spoken-command.ts';
import type { Speaker, Terminal } from './terminal.ts';

/** Exit status for bad input. */
export const BAD_INPUT = 2;

/** Exit status for a fault of the program itself (sysexits.h: EX_SOFTWARE). */
export const INTERNAL_ERROR = 70;

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
    const read = text.split(',').flatMap((each) => readExerciseLabel(each) ?? []);
    if (read.length === text.split(',').length) return read;
    return refuseOption(option, text, (expected) => expected.keep);
  };
}

function exerciseNumber(text: string): number {
  const value = readExerciseLabel(text);
  if (value !== null) return value;
  throw refused('exercise', `"${text}"`, (expected) => expected.exerciseNumber);
}

/** How the command line is used, in a language. */
type Help = CliWords['help'];

/** Gives what a command speaks to, in the language that was asked for. */
type Speak = () => Speaker;

function addCheck(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('check')
    .summary(help.check.summary)
    .description(help.check.description)
    .argument('<lesson...>', help.check.lesson)
    .option('--json', help.check.json)
    .action(async (paths: string[], options: { json?: boolean }) => {
      const { check } = await import('./commands/check.ts');
      done(await check(paths, options.json ?? false, speaker()));
    });
}

function addNew(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('new')
    .summary(help.fresh.summary)
    .description(help.fresh.description)
    .argument('[groove]', help.fresh.groove)
    .option('--title <title>', help.fresh.title)
    .option('--out <file>', help.fresh.out)
    .action(async (groove: string | undefined, options: { title?: string; out?: string }) => {
      const { newLesson } = await import('./commands/new.ts');
      done(await newLesson({ ...(groove === undefined ? {} : { groove }), ...options }, speaker()));
    });
}

function addBuild(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('build')
    .summary(help.build.summary)
    .description(help.build.description)
    .argument('<lesson>', help.build.lesson)
    .requiredOption('--out <folder>', help.build.out)
    .option('--audio <format>', help.build.audio)
    .option('--tempo <bpm>', help.build.tempo)
    .option('--form <name>', help.build.form)
    .option('--layers <n>', help.build.layers)
    .option('--mute <voices>', help.build.mute)
    .option('--exercise <numbers>', help.build.exercise)
    .option('--paper <size>', help.build.paper)
    .option('--loudness <lufs>', help.build.loudness)
    .option('--kit <file>', help.build.kit)
    .option('--click <beats>', help.build.click)
    .option('--subdivide <slots>', help.build.subdivide)
    .option('--gap <bars>', help.build.gap)
    .option('--count-aloud', help.build.countAloud)
    .option('--dry', help.build.dry)
    .option('--pack', help.build.pack)
    .option('--performance <file>', help.build.performance, each)
    .option('--films', help.build.films)
    .option('--json', help.build.json)
    .addHelpText('after', help.build.after)
    .action(async (lesson: string, options) => {
      const { build } = await import('./commands/build.ts');
      done(await build(lesson, options, speaker()));
    });
}

function addCompose(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('compose')
    .summary(help.compose.summary)
    .description(help.compose.description)
    .argument('<lesson>', help.compose.lesson)
    .option('--section <n>', help.compose.section, whole('section', 1, 1000))
    .option('--count <n>', help.compose.count, whole('count', 1, 400))
    .option('--seed <s>', help.compose.seed)
    .option('--keep <numbers>', help.compose.keep, numbers('keep'))
    .option('--bars <n>', help.compose.bars, whole('bars', 1, 8))
    .option('--idiom <share>', help.compose.idiom, share('idiom'))
    .option('--headings', help.compose.headings)
    .option('--with <voice>', help.compose.with)
    .option('--phrase <form>', help.compose.phrase, phraseForm)
    .option('--questions', help.compose.questions)
    .option('--weak <move>', help.compose.weak)
    .option('--review <lessons...>', help.compose.review)
    .option('--variations <n>', help.compose.variations, whole('variations', 1, 10_000))
    .option('--easier <n>', help.compose.easier, whole('easier', 1, 10_000))
    .option('--harder <n>', help.compose.harder, whole('harder', 1, 10_000))
    .option('--like <n>', help.compose.like, whole('like', 1, 10_000))
    .option('--goal <n>', help.compose.goal, whole('goal', 1, 10_000))
    .option('--put', help.compose.put)
    .option('--has <numbers>', help.compose.has, numbers('has'))
    .option('--term <pages>', help.compose.term, whole('term', 2, 40))
    .option('--out <file>', help.compose.out)
    .option('--explain', help.compose.explain)
    .option('--json', help.compose.json)
    .addHelpText('after', help.compose.after)
    .action(async (lesson: string, options) => {
      const { composeCommand } = await import('./commands/compose.ts');
      done(await composeCommand({ lesson, ...options }, speaker()));
    });
}

function addPrepare(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('prepare')
    .summary(help.prepare.summary)
    .description(help.prepare.description)
    .argument('<lesson>', help.prepare.lesson)
    .option('--section <n>', help.prepare.section, whole('section', 1, 1000))
    .option('--out <file>', help.prepare.out)
    .action(async (lesson: string, options) => {
      const { prepareCommand } = await import('./commands/prepare.ts');
      done(await prepareCommand({ lesson, ...options }, speaker()));
    });
}

function addArrange(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('arrange')
    .summary(help.arrange.summary)
    .description(help.arrange.description)
    .argument('<lesson>', help.arrange.lesson)
    .option('--share <rule>', help.arrange.share)
    .option('--lower <voice>', help.arrange.lower)
    .option('--kit <rule>', help.arrange.kit)
    .option('--accents <rule>', help.arrange.accents)
    .option('--hands <rule>', help.arrange.hands)
    .option('--fill <beats>', help.arrange.fill, whole('fill', 1, 2))
    .option('--phrase <bars>', help.arrange.phrase, whole('phrase', 1, 16))
    .option('--exercise <numbers>', help.arrange.exercise)
    .option('--seed <s>', help.arrange.seed)
    .option('--out <file>', help.arrange.out)
    .option('--explain', help.arrange.explain)
    .option('--json', help.arrange.json)
    .addHelpText('after', help.arrange.after)
    .action(async (lesson: string, options) => {
      const { arrangeCommand } = await import('./commands/arrange.ts');
      done(await arrangeCommand({ lesson, ...options }, speaker()));
    });
}

/** An option that may be given several times. */
function each(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}

function addFilm(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('film')
    .summary(help.film.summary)
    .description(help.film.description)
    .argument('<lesson>', help.film.lesson)
    .requiredOption('--out <file>', help.film.out)
    .option('--exercise <numbers>', help.film.exercise)
    .option('--form <name>', help.film.form)
    .option('--tempo <tempi>', help.film.tempo)
    .option('--shape <shape>', help.film.shape)
    .option('--scheme <scheme>', help.film.scheme)
    .option('--rate <frames>', help.film.rate)
    .option('--no-build-up', help.film.buildUp)
    .option('--click <beats>', help.build.click)
    .option('--subdivide <slots>', help.build.subdivide)
    .option('--gap <bars>', help.build.gap)
    .option('--count-aloud', help.build.countAloud)
    .option('--performance <file>', help.film.performance, each)
    .option('--picture <place>', help.film.picture)
    .option('--sound <from>', help.film.sound)
    .option('--model-level <db>', help.film.modelLevel)
    .option('--speed <percent>', help.film.speed)
    .option('--kit <file>', help.film.kit)
    .option('--json', help.film.json)
    .addHelpText('after', help.film.after)
    .action(async (lesson: string, options) => {
      const { film } = await import('./commands/film.ts');
      done(await film(lesson, options, speaker()));
    });
}

function addWeights(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('weights')
    .summary(help.weights.summary)
    .description(help.weights.description)
    .argument('<lesson>', help.weights.lesson)
    .requiredOption('--log <file>', help.weights.log, each)
    .option('--accept', help.weights.accept)
    .option('--json', help.weights.json)
    .action(async (lesson: string, options: { log: readonly string[]; accept?: boolean; json?: boolean }) => {
      const { weights } = await import('./commands/weights.ts');
      done(await weights({ lesson, ...options }, speaker()));
    });
}

function addWhy(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('why')
    .summary(help.why.summary)
    .description(help.why.description)
    .argument('<lesson>', help.why.lesson)
    .argument('<exercise>', help.why.exercise, exerciseNumber)
    .argument('[other]', help.why.other, exerciseNumber)
    .option('--json', help.why.json)
    .action(async (lesson: string, first: number, other: number | undefined, options: { json?: boolean }) => {
      const { why } = await import('./commands/why.ts');
      done(
        await why(lesson, other === undefined ? [first] : [first, other], options.json ?? false, speaker()),
      );
    });
}

function addListen(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('listen')
    .summary(help.listen.summary)
    .description(help.listen.description)
    .argument('<take>', help.listen.take)
    .requiredOption('--lesson <file>', help.listen.lesson)
    .option('--exercise <n>', help.listen.exercise, exerciseNumber)
    .option('--form <name>', help.listen.form)
    .option('--tempo <bpm>', help.listen.tempo, whole('tempo', LESSON_TEMPI.least, LESSON_TEMPI.most))
    .option('--latency <ms>', help.listen.latency, whole('latency', 0, 2000))
    .option('--level <level>', help.listen.level)
    .option('--plays <voices>', help.listen.plays)
    .option('--on <surface>', help.listen.on)
    .option('--playing <file>', help.listen.playing)
    .option('--keys <file>', help.listen.keys)
    .option('--line-check <file>', help.listen.lineCheck)
    .option('--picture <file>', help.listen.picture)
    .option('--json', help.listen.json)
    .action(async (take: string, options) => {
      const { listenCommand } = await import('./commands/listen.ts');
      done(await listenCommand({ take, ...options }, speaker()));
    });
}

function addHear(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('hear')
    .summary(help.hear.summary)
    .description(help.hear.description)
    .argument('<take>', help.hear.take)
    .option('--tempo <bpm>', help.hear.tempo, whole('tempo', LESSON_TEMPI.least, LESSON_TEMPI.most))
    .option('--meter <meter>', help.hear.meter)
    .option('--feel <feel>', help.hear.feel)
    .option('--title <title>', help.hear.title)
    .option('--keys <file>', help.hear.keys)
    .option('--out <file>', help.hear.out)
    .option('--json', help.hear.json)
    .action(async (take: string, options) => {
      const { hearCommand } = await import('./commands/hear.ts');
      done(await hearCommand({ take, ...options }, speaker()));
    });
}

function addKeys(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('keys')
    .summary(help.keys.summary)
    .description(help.keys.description)
    .argument('<take>', help.keys.take)
    .requiredOption('--pads <voices>', help.keys.pads)
    .option('--out <file>', help.keys.out)
    .option('--json', help.keys.json)
    .action(async (take: string, options) => {
      const { keysCommand } = await import('./commands/keys.ts');
      done(await keysCommand({ take, ...options }, speaker()));
    });
}

function addLineCheck(program: Command, help: Help, speaker: Speak, done: (status: number) => void): void {
  program
    .command('line-check')
    .summary(help.lineCheck.summary)
    .description(help.lineCheck.description)
    .argument('<take>', help.lineCheck.take)
    .requiredOption('--limbs <voices>', help.lineCheck.limbs)
    .option('--name <name>', help.lineCheck.name)
    .option('--out <file>', help.lineCheck.out)
    .option('--json', help.lineCheck.json)
    .action(async (take: string, options) => {
      const { lineCheckCommand } = await import('./commands/line-check.ts');
      done(await lineCheckCommand({ take, ...options }, speaker()));
    });
}

function addServe(program: Command, help: Help, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('serve')
    .summary(help.serve.summary)
    .description(help.serve.description)
    .option('--port <n>', help.serve.port, whole('port', 0, 65_535))
    .option('--host <host>', help.serve.host)
    .option('--address <url>', help.serve.address)
    .option('--data <folder>', help.serve.data)
    .option('--no-open', help.serve.open)
    .action(async (options) => {
      const { serveUntilStopped } = await import('./commands/serve.ts');
      await serveUntilStopped(options, speaker(), loadDesk);
    });
}

function addPassphrase(program: Command, help: Help, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('passphrase')
    .summary(help.passphrase.summary)
    .description(help.passphrase.description)
    .option('--data <folder>', help.passphrase.data)
    .action(async (options) => {
      const { passphrase } = await import('./commands/passphrase.ts');
      const { askSecret } = await import('./secret.ts');
      await passphrase(options, speaker(), loadDesk, askSecret);
    });
}

function addTeacher(program: Command, help: Help, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('teacher')
    .summary(help.teacher.summary)
    .description(help.teacher.description)
    .argument('[name]', help.teacher.name)
    .option('--address <url>', help.teacher.address)
    .option('--data <folder>', help.teacher.data)
    .action(async (name: string | undefined, options) => {
      const { teacher } = await import('./commands/teacher.ts');
      await teacher({ ...(name === undefined ? {} : { name }), ...options }, speaker(), loadDesk);
    });
}

function addBackup(program: Command, help: Help, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('backup')
    .summary(help.backup.summary)
    .description(help.backup.description)
    .argument('[file]', help.backup.file)
    .option('--data <folder>', help.backup.data)
    .option('--json', help.backup.json)
    .action(async (file: string | undefined, options) => {
      const { backup } = await import('./commands/backup.ts');
      await backup(file, options, speaker(), loadDesk);
    });
}

function addRestore(program: Command, help: Help, speaker: Speak, loadDesk: LoadDesk): void {
  program
    .command('restore')
    .summary(help.restore.summary)
    .description(help.restore.description)
    .argument('<file>', help.restore.file)
    .option('--data <folder>', help.restore.data)
    .option('--json', help.restore.json)
    .action(async (file: string, options) => {
      const { restoreCommand } = await import('./commands/backup.ts');
      await restoreCommand(file, options, speaker(), loadDesk);
    });
}

function addDoctor(
  program: Command,
  help: Help,
  speaker: Speak,
  done: (status: number) => void,
  loadDesk: LoadDesk,
): void {
  program
    .command('journal')
    .summary(help.journal.summary)
    .description(help.journal.description)
    .option('--data <folder>', help.journal.data)
    .option('--count <n>', help.journal.count, whole('count', 1, 100_000), 50)
    .option('--json', help.journal.json)
    .action(async (options) => {
      const { journal } = await import('./commands/journal.ts');
      await journal(options, speaker(), loadDesk);
    });
  program
    .command('doctor')
    .summary(help.doctor.summary)
    .description(help.doctor.description)
    .option('--data <folder>', help.doctor.data)
    .option('--save <folder>', help.doctor.save)
    .option('--json', help.doctor.json)
    .action(async (options) => {
      const { doctor } = await import('./commands/doctor.ts');
      done(await doctor(options, speaker(), loadDesk));
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
  /** Told which command was asked for, before anything is loaded for it. */
  readonly settle: (command: string) => void;
}

/** The whole command line; `done` is told the exit status of what ran. */
function createProgram(
  terminal: Terminal,
  speaker: (program: Command) => Speaker,
  done: (status: number) => void,
  { loadDesk, settle, words }: Omit<Running, 'locale'> & { readonly words: CliWords },
): Command {
  const { help } = words;
  const program = new SpokenCommand('shedbook', words.usage)
    .description(help.intro)
    .version('0.1.0', '-V, --version', help.ofVersion)
    .helpOption('-h, --help', help.ofHelp)
    .helpCommand('help [command]', help.helpCommand)
    .configureHelp({ styleTitle: (title) => titleIn(help, title) })
    .option('--language <code>', help.language, languageTag)
    .showHelpAfterError(help.afterError)
    .configureOutput({
      writeOut: (text) => terminal.say(text.trimEnd()),
      writeErr: (text) => terminal.warn(text.trimEnd()),
    })
    .exitOverride()
    .hook('preAction', (_program, command) => settle(command.name()));
  const speak = () => speaker(program);
  addNew(program, help, speak, done);
  addCheck(program, help, speak, done);
  addBuild(program, help, speak, done);
  addFilm(program, help, speak, done);
  addCompose(program, help, speak, done);
  addArrange(program, help, speak, done);
  addPrepare(program, help, speak, done);
  addWhy(program, help, speak, done);
  addWeights(program, help, speak, done);
  addListen(program, help, speak, done);
  addHear(program, help, speak, done);
  addKeys(program, help, speak, done);
  addLineCheck(program, help, speak, done);
  addServe(program, help, speak, loadDesk);
  addPassphrase(program, help, speak, loadDesk);
  addTeacher(program, help, speak, loadDesk);
  addBackup(program, help, speak, loadDesk);
  addRestore(program, help, speak, loadDesk);
  addDoctor(program, help, speak, done, loadDesk);
  return program;
}

/** The language of an environment: that of its locale (POSIX.1-2017, section 8.2), else English. */
function localeLanguage(locale: string): LanguageTag {
  return pickLanguage([locale.replace(/[_.@].*$/, '')]);
}

/** The language of help: it is asked for before options are read, so the option is looked for by hand. */
function helpLanguage(args: readonly string[], locale: string): LanguageTag {
  const at = args.findIndex((each) => /^--language(?:=|$)/.test(each));
  const asked = args[at]?.split('=')[1] ?? (at < 0 ? undefined : args[at + 1]);
  return LANGUAGE_TAGS.find((tag) => tag === asked) ?? localeLanguage(locale);
}

/** The headings that commander writes over the parts of help. */
const HEADINGS: Readonly<Record<string, keyof Help['titles']>> = {
  'Usage:': 'usage',
  'Arguments:': 'arguments',
  'Options:': 'options',
  'Commands:': 'commands',
};

/** A heading of help in a language. */
function titleIn({ titles }: Help, heading: string): string {
  const name = HEADINGS[heading];
  return name ? titles[name] : heading;
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
  { loadDesk = noDesk, locale = '', settle = () => {} }: Partial<Running> = {},
): Promise<number> {
  let status = 0;
  const done = (of: number) => {
    status = of;
  };
  const speaker = (program: Command): Speaker => {
    const { language = localeLanguage(locale) } = program.opts<{ language?: LanguageTag }>();
    return { ...terminal, catalogue: CLI[language] };
  };
  const program = createProgram(terminal, speaker, done, {
    ...{ loadDesk, settle },
    words: CLI[helpLanguage(args, locale)].words,
  });
  try {
    await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    status = statusOf(error, speaker(program));
  }
  return status;
}
