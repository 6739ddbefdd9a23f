/** The words of hearing oneself, takes, plan, log and care, in English; loaded only where they are wanted. */
import type { PlanKind } from '@shedbook/coach';
import type { LoopVerdict } from '@shedbook/core';
import type { Reason } from '@shedbook/judge';
import { voices } from '../desk/english.ts';

function count(n: number, one: string, many: string): string {
  return n === 1 ? `${n} ${one}` : `${n} ${many}`;
}

/** What a reason is about, already in words. */
export interface SaidReason extends Pick<Reason, 'kind' | 'amount'> {
  /** Limb and voice, or null for the tempo as a whole. */
  readonly who: string | null;
  /** Where, or null throughout. */
  readonly where: string | null;
  readonly lead: string;
}

function reason({ kind, amount, who, where, lead }: SaidReason): string {
  const n = Math.round(amount);
  const place = where === null ? 'throughout' : `on ${where}`;
  if (who === null) return `${kind === 'slow' ? 'Slower' : 'Faster'} than asked by about ${n} percent.`;
  if (kind === 'missed') return `${who}: missing ${place}.`;
  if (kind === 'extra') return `${who}: a stroke too many${where === null ? '' : ` near ${where}`}.`;
  if (kind === 'loud' || kind === 'quiet') return `${who}: about ${n} dB too ${kind} against the ${lead}.`;
  return `${who}: ${kind} by about ${n} ms ${place}.`;
}

function megabytes(bytes: number): string {
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}

/** The words. */
export const hearingEnglish = {
  voices,
  limbs: {
    'right hand': 'Right hand',
    'left hand': 'Left hand',
    'right foot': 'Right foot',
    'left foot': 'Left foot',
  } as Readonly<Record<string, string>>,
  who: (limb: string, voice: string) => `${limb} (${voice})`,
  place: (syllable: string | null, beat: number, bar: number | null) =>
    `${syllable === null ? beat : `the ${syllable} of ${beat}`}${bar === null ? '' : ` in bar ${bar}`}`,
  reason,
  close: 'Done',
  hearing: {
    title: 'Hear yourself',
    lead: 'Play along, and each stroke is shown where it fell: left of its note when early, right when late. After every round it says what to listen for.',
    privacy:
      'What is heard stays on this device. For the microphone, the browser will ask whether this page may use it.',
    headphones: 'Wear headphones for the recording: a loudspeaker would be heard along with you.',
    microphone: 'Use the microphone',
    kit: 'Use an electronic kit',
    stop: 'Stop listening',
    opening: { microphone: 'Waiting for the microphone …', kit: 'Looking for a kit …' },
    on: { microphone: 'Listening with the microphone.', kit: 'Listening to the kit.' },
    refusals: {
      microphone: {
        denied:
          'The browser was not allowed to use the microphone. Allow it in the settings of this page and try again.',
        missing: 'No microphone was found. Plug one in and try again.',
        busy: 'The microphone could not be opened; perhaps another program is using it.',
        'not here': 'This browser gives no microphone to this page. An address that begins with https helps.',
        none: 'No microphone was found. Plug one in and try again.',
      },
      kit: {
        denied:
          'The browser was not allowed to use MIDI. Allow it in the settings of this page and try again.',
        missing: 'No kit was found. Plug it in, switch it on and try again.',
        busy: 'The kit could not be opened; perhaps another program is using it.',
        'not here': 'This browser knows no MIDI. Another one may, or use the microphone.',
        none: 'No kit was found. Plug it in, switch it on and try again.',
      },
    },
    goesOn: 'Everything else goes on without it.',
    levels: {
      silent: 'Nothing is heard yet.',
      soft: 'Very soft: move the device nearer.',
      good: 'Heard well.',
      loud: 'Too loud: move the device away.',
    },
    waiting: 'Press play; listening begins with the first bar.',
    picture: 'What was heard',
    legend: (times: number) =>
      `Drawn ${times} times as early or late as it was. A ring is a stroke that was not heard, a plus one too many.`,
    level: 'How strict',
    strictness: { beginner: 'First steps', intermediate: 'Growing', advanced: 'Fluent' },
    handsFree: 'Go on by itself',
    handsFreeHint: (loops: number) =>
      `After ${count(loops, 'clean round', 'clean rounds')} the next exercise comes.`,
    loops: 'Clean rounds before the next exercise',
    list: (numbers: string) => `Today’s list: ${numbers}`,
    bySheet: 'In the order of the sheet',
    stay: 'Stay here',
    goOn: 'Go on again',
    said: {
      next: (n: number) => `Next: exercise ${n}.`,
      staying: 'Staying until you say go on.',
      held: 'Comfortable. Staying, as you asked.',
      'going on': 'Going on when this one is comfortable.',
      more: (n: number) =>
        n === 1
          ? 'One more clean round, then the next exercise.'
          : `${n} more clean rounds, then the next exercise.`,
      'all done': 'That was the last exercise.',
    },
  },
  after: {
    title: 'After the round',
    verdicts: {
      clean: 'Clean.',
      loose: 'The pattern held, with strokes off their place.',
      stumble: 'The pattern came apart.',
      unheard: 'Not enough was heard to judge.',
    } as Readonly<Record<LoopVerdict, string>>,
    recording:
      'The microphone heard the recording itself. Wear headphones, or choose under “More” what you play, so that it falls silent.',
    short: { clean: 'clean', loose: 'loose', stumble: 'came apart', unheard: 'not heard' } as Readonly<
      Record<LoopVerdict, string>
    >,
    round: (n: number, bpm: number, verdict: string) => `Round ${n} at ${bpm}: ${verdict}`,
    rounds: 'The last rounds',
    nothing: 'The first round has not been played to its end yet.',
  },
  latency: {
    title: 'Timing check',
    known: (ms: number) => `Sound takes ${ms} ms there and back; that is taken off.`,
    guessed: 'Not checked yet: early and late are only roughly right.',
    check: 'Check the timing',
    again: 'Check again',
    leadMicrophone:
      'Ten clicks will sound, and the microphone listens for them. Lay the headphones on the microphone, or turn the loudspeaker up, and keep quiet.',
    leadKit: 'Sixteen clicks will sound. Play along with them on one pad, as closely as you can.',
    start: 'Start the check',
    running: 'Checking …',
    result: (ms: number, spread: number, heard: number, played: number) =>
      `${ms} ms there and back, give or take ${spread} ms; ${heard} of ${played} clicks heard.`,
    failed: 'Too few clicks were heard. Make them louder, or the room quieter, and try again.',
    hand: 'Or by hand, in milliseconds',
    keep: 'Keep',
    kept: 'Kept for these devices.',
  },
  takes: {
    title: 'Takes',
    lead: 'Recordings stay on this device until you delete them or send them.',
    keepAll: 'Keep every take',
    keep: 'Keep this take',
    kept: 'The take is kept.',
    full: 'There is no room left on this device. Delete some takes first.',
    empty: 'No takes yet.',
    exercise: (n: number | null) => (n === null ? 'Time alone' : `Exercise ${n}`),
    about: (when: string, bpm: number, seconds: number) => `${when}, ${bpm} bpm, ${seconds} s`,
    rounds: (clean: number, all: number) => `${clean} of ${count(all, 'round', 'rounds')} clean`,
    unheard: 'not judged',
    report: 'The whole report',
    reportOf: (title: string) => `Report on ${title}`,
    listen: 'Listen',
    preparing: 'Setting up …',
    play: 'Play',
    stop: 'Stop',
    side: 'What you hear',
    sides: { take: 'You', model: 'The model', both: 'Both' },
    other: 'The lesson has changed; there is no model for this take any more.',
    export: 'Save for your teacher',
    remove: 'Delete',
    removed: 'The take was deleted.',
    undo: 'Undo',
    space: (used: number, left: number | null) =>
      left === null
        ? `Takes use ${megabytes(used)}.`
        : `Takes use ${megabytes(used)}; ${megabytes(left)} are left.`,
    broken: 'This take could not be played.',
  },
  plan: {
    title: 'Today',
    minutes: 'Minutes I have',
    minutesOf: (n: number) => count(n, 'minute', 'minutes'),
    short: (n: number) => `${n} min`,
    open: (what: string) => `Practise ${what}`,
    exercise: (n: number, name: string | null) => `Exercise ${n}${name === null ? '' : ` (${name})`}`,
    groove: 'The groove alone',
    rest: 'Break',
    tempo: (from: number, goal: number) => (from === goal ? `${from} bpm` : `${from} to ${goal} bpm`),
    reason: (_kind: PlanKind, coach: string) => coach,
    note: (_kind: 'enough' | 'other', coach: string) => coach,
    takeUp: 'Practise this list, hands free',
  },
  log: {
    title: 'What you have played',
    lead: 'By exercise and tempo. It stays on this device, also when the sheet is renewed.',
    empty: 'Nothing yet.',
    exercise: 'Exercise',
    time: 'Time played',
    clean: 'Clean up to',
    last: 'Last played',
    never: 'not yet',
    export: 'Save the log',
    import: 'Read a log',
    imported: (n: number) =>
      n === 0 ? 'Nothing new in this file.' : `${count(n, 'entry was', 'entries were')} added.`,
    refused: (file: string) => `${file} was not read:`,
    problem: (line: number, column: number, found: string, expected: string) =>
      `Line ${line}, column ${column}: found ${found}; expected ${expected}.`,
    more: (n: number) => `… and ${count(n, 'more problem', 'more problems')}.`,
  },
  care: {
    title: 'Ears and body',
    first: 'Local rules and the advice of a licensed practitioner come before anything said here.',
    protect: 'Drums are loud. Wear ear protection that fits, and keep the recording no louder than you need.',
    ringing: 'If your ears ring or sounds seem dull after playing, stop for today and give them quiet.',
    warmUp: 'Begin slow and soft, and sit so that nothing has to stretch.',
    pain: 'Stop when something hurts. Do not play through pain; if it stays or comes back, see a licensed practitioner.',
    rest: 'Time for a break: sticks down, stand up, let hands and ears rest.',
    later: 'Later',
    exposure: 'How long at this level',
    level: 'Level at the ear',
    db: (db: number) => `${db} dBA`,
    meter: 'Measure it with a sound level meter where your ears are; a full drum set is often 95 to 110 dBA.',
    whose: 'Whose ears',
    listeners: { adult: 'adult', child: 'child, or sensitive ears' },
    left: (db: number, time: string, week: boolean) =>
      `At ${db} dBA about ${time} are left ${week ? 'this week' : 'today'}, ear protection not counted.`,
    usedUp: (db: number) => `At ${db} dBA the recommended time is used up; play on a pad or without sound.`,
    source: 'By NIOSH 98-126 for a day and WHO-ITU H.870 for a week. Information, not medical advice.',
  },
};

/** The words of one language. */
export type HearingWords = typeof hearingEnglish;
