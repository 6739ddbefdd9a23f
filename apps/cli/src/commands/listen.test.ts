import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type MidiEvent, writeMidi } from 'midi-file';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readOutside } from '../../../../internal/testing/midi.ts';
import { runProgram } from '../program.ts';

let folder = '';
let lesson = '';

async function run(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const say = (line: string) => void out.push(line);
  const status = await runProgram(args, { say, warn: (line) => void err.push(line), progress: () => {} });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shedbook-listen-'));
  lesson = join(folder, 'first.lesson.yaml');
  await writeFile(lesson, 'title: T\nfeel: triplet\nbalance: {bass: -10}\nexercises:\n  - x.. ..x x.x ..x\n');
  await run('build', lesson, '--out', folder, '--audio', 'wav', '--form', 'loop', '--tempo', '100');
}, 60_000);

afterAll(() => rm(folder, { recursive: true }));

const options = () => ['--lesson', lesson, '--exercise', '1', '--tempo', '100'];

it('[CL20] reports a recording in words and figures', async () => {
  const { status, out } = await run('listen', join(folder, 'audio/01.wav'), ...options());
  expect(status).toBe(0);
  expect(out).toMatch(
    /^(99\.[89]|100\.[012]) quarter notes a minute from 2\.\d+ s on, swing (1\.9|2\.0)\d:1\.$/m,
  );
  // definition: four bars of five snare strokes and six of the ride
  expect(out).toMatch(/^ {2}ride +24 of 24 /m);
  expect(out).toMatch(/^ {2}snare +20 of 20 /m);
});

it('[CL20] prints a report of the model itself that is judged clean', async () => {
  const { out } = await run('listen', join(folder, 'audio/01.wav'), ...options(), '--json');
  // definition: what is built is what is asked, stroke by stroke, level by level
  expect(JSON.parse(out).verdict).toEqual({ level: 'intermediate', is: 'clean', about: [] });
});

it('[CL3300] hears the groove alone where no exercise is named and time was played', async () => {
  await run('build', lesson, '--out', join(folder, 'time'), '--form', 'time', '--tempo', '100');
  const take = join(folder, 'time/exercises/01.mid');
  const heard = async (...more: string[]) => {
    const { status, out } = await run(
      'listen',
      take,
      '--lesson',
      lesson,
      '--tempo',
      '100',
      ...more,
      '--json',
    );
    expect(status).toBe(0);
    return JSON.parse(out);
  };
  const { verdict, strokes, missed } = await heard();
  // definition: what is built as time is the groove alone
  expect(verdict).toEqual({ level: 'intermediate', is: 'clean', about: [] });
  expect(missed).toEqual([]);
  expect(strokes.map(({ voice }: { voice: string }) => voice)).not.toContain('snare');
  // as the exercise it lacks the comping, but for a form of time alone
  expect((await heard('--exercise', '1', '--form', 'loop')).verdict.about[0]).toMatchObject({
    what: 'missing',
  });
});

it('[CL35] gives the verdict of the practice page, for a level and for the voices that a student plays', async () => {
  const verdict = async (...more: string[]) => {
    const { out, status } = await run(
      'listen',
      join(folder, 'exercises/01.mid'),
      ...options(),
      ...more,
      '--json',
    );
    expect(status).toBe(0);
    return JSON.parse(out).verdict;
  };
  expect(await verdict('--level', 'advanced')).toEqual({ level: 'advanced', is: 'clean', about: [] });
  expect((await verdict('--plays', 'snare,ride')).is).toBe('clean');
  const wrong = await run('listen', join(folder, 'exercises/01.mid'), ...options(), '--plays', 'snar');
  expect(wrong.err).toContain('(did you mean "snare"?)');
});

it('[CL42] takes out what a loudspeaker played, and says where nothing else is heard', async () => {
  const take = join(folder, 'audio/01.wav');
  const { out, status } = await run('listen', take, ...options(), '--playing', take, '--json');
  expect(status).toBe(0);
  // definition: the take is what the loudspeaker played
  expect(JSON.parse(out)).toMatchObject({ report: null, verdict: { about: [{ what: 'only-loudspeaker' }] } });
});

it('[CL800] says which bars never came, and that it may have been another exercise', async () => {
  const asked = join(folder, 'bars.lesson.yaml');
  const shared = 'x.. ..x ... ..x';
  const bars = `feel: triplet\nforms: {long: {sections: [{pattern: 6}]}}\nexercises:\n  - ${shared}\n`;
  await writeFile(asked, `title: T\n${bars}  - ${shared} | ..x x.. ..x ... | x.x ... x.. ..x\n`);
  const to = join(folder, 'bars');
  const made = ['--exercise', '1', '--form', 'long', '--tempo', '100'];
  await run('build', asked, '--out', to, '--audio', 'wav', '--dry', ...made);
  // definition: the first bar, which is exercise 1, round and round: two of three bars are missing
  const english = [
    'Bars 2 and 3 were left out: play every bar, one after the other.',
    'Bars left out: 2 of 3. What was played is all of exercise 1, so perhaps that one was meant.',
  ];
  const german = [
    'Die Takte 2 und 3 fehlten: Spiel jeden Takt, einen nach dem anderen.',
    'Ausgelassene Takte: 2 von 3. Gespielt wurde Übung 1 ganz, vielleicht war also die gemeint.',
  ];
  for (const [take, language, sentences] of [
    ['audio/01.wav', 'en', english],
    ['exercises/01.mid', 'de', german],
  ] as const) {
    const what = ['--lesson', asked, '--exercise', '2', '--form', 'long', '--language', language];
    const { out, status } = await run('listen', join(to, take), ...what);
    expect(status).toBe(0);
    expect(out.split('\n').slice(0, 2)).toEqual(sentences);
  }
});

it('[CL3900] finds the exercise that was played where nobody says which, and says how surely', async () => {
  const asked = join(folder, 'which.lesson.yaml');
  const bars = ['x.. ... ..x ...', '..x x.x ... x..', 'x.x ..x x.. ..x'];
  const text = `title: T\nfeel: triplet\nexercises:\n${bars.map((bar) => `  - ${bar}\n`).join('')}`;
  await writeFile(asked, text);
  const to = join(folder, 'which');
  const made = ['--exercise', '2', '--form', 'loop', '--tempo', '100', '--dry'];
  await run('build', asked, '--out', to, '--audio', 'wav', ...made);
  const what = ['--lesson', asked];
  const sound = await run('listen', join(to, 'audio/02.wav'), ...what);
  // definition: exercise 2 was recorded
  expect(sound.out.split('\n')[0]).toBe('Exercise 2 was played.');
  const notes = await run('listen', join(to, 'exercises/02.mid'), ...what, '--json');
  expect(JSON.parse(notes.out).number).toBe(2);
  // the bar of another lesson is no exercise of this one for certain
  const other = join(folder, 'audio/01.wav');
  const [first, second] = (await run('listen', other, ...what, '--language', 'de')).out.split('\n');
  expect(first).toMatch(/^Am ehesten ist es Übung \d\.$/);
  expect(second).not.toContain('keiner zu viel');
  // what the click says cannot be heard as something else
  const along = await run('listen', join(to, 'exercises/02.mid'), ...what, '--latency', '0');
  expect(along).toMatchObject({
    status: 2,
    err: 'It cannot be told which exercise was played; say it with --exercise, a number from 1 to 3.',
  });
});

it('[CL47] takes any tap and any key for the exercise on a pad', async () => {
  // the comping's own recording after a count: whatever it sounds like, its strokes are the exercise's
  const to = join(folder, 'alone');
  const alone = ['--mute', 'ride,hihat-foot,bass', '--form', 'loop', '--tempo', '100', '--dry'];
  await run('build', lesson, '--out', to, '--audio', 'wav', ...alone);
  // four bars of x.. ..x x.x ..x on the key of a tom, 96 ticks a quarter
  const key = 45;
  const bar = [0, 160, 192, 256, 352];
  const ticks = [0, 1, 2, 3].flatMap((turn) => bar.map((tick) => tick + 384 * turn));
  const sent = await fileOf(
    'pad.mid',
    ticks.map((tick) => [tick, key] as const),
  );
  for (const [take, tempo] of [
    [join(to, 'audio/01.wav'), '100'],
    [sent, '120'],
  ] as const) {
    const asked = ['--lesson', lesson, '--exercise', '1', '--tempo', tempo, '--on', 'pad', '--json'];
    const { status, out } = await run('listen', take, ...asked);
    expect(status).toBe(0);
    // definition: four bars of five strokes, and nothing else is asked for
    expect(JSON.parse(out)).toMatchObject({
      voices: { snare: { hits: 20, missed: 0, extra: 0 } },
      verdict: { is: 'clean', about: [] },
    });
    expect(Object.keys(JSON.parse(out).voices)).toEqual(['snare']);
  }
  const wrong = await run('listen', sent, ...options(), '--on', 'table');
  expect(wrong.status).toBe(2);
  expect(wrong.err).toContain('kit, pad');
});

it('[CL26] says three sentences first, for a level and in a language', async () => {
  const take = join(folder, 'exercises/01.mid');
  const said = async (...more: string[]) =>
    (await run('listen', take, ...options(), ...more)).out.split('\n');
  expect((await said()).slice(0, 4)).toEqual([
    // definition: four bars of 6 ride, 2 hi-hat foot, 4 bass drum and 5 snare strokes
    'All 68 strokes are there, and no others.',
    'The tempo holds at 100.',
    'The ride is steady: half of its strokes lie within 1 ms of their place.',
    '',
  ]);
  const german = await said('--language', 'de', '--level', 'beginner');
  expect(german[0]).toBe('Alle 68 Schläge sind da, und keiner zu viel.');
  expect(german[4]).toMatch(/^100,0 Viertel in der Minute ab \d,\d\d s, Swing 2,00:1\.$/);
  // definition: the file is at 100
  const other = ['--tempo', '120'];
  expect((await said(...other)).at(-1)).toBe('It was played at 100 beats a minute, not at 120.');
  expect((await said(...other, '--language', 'de')).at(-1)).toBe(
    'Gespielt wurde mit 100 Vierteln in der Minute, nicht mit 120.',
  );
  const wrong = await run('listen', take, ...options(), '--level', 'begginer');
  expect(wrong.err).toBe(
    '--level: found "begginer", expected one of beginner, intermediate, advanced (did you mean "beginner"?)',
  );
});

it('[CL28] measures a take that began with the click against the click', async () => {
  const along = async (take: string, latency: string) => {
    const { out } = await run('listen', join(folder, take), ...options(), '--latency', latency, '--json');
    const { voices, alignment } = JSON.parse(out);
    return { ride: voices.ride, startSeconds: alignment.startSeconds };
  };
  const exact = await along('exercises/01.mid', '0');
  // definition: our own file is the click itself; heard 25 ms early when the click is said to sound 25 ms late
  expect(exact.ride).toMatchObject({ hits: 24, missed: 0, offsetMs: { median: expect.closeTo(0, 0) } });
  expect((await along('exercises/01.mid', '25')).ride.offsetMs.median).toBeCloseTo(-25, 0);
  const heard = await along('audio/01.wav', '0');
  expect(heard.ride.hits).toBeGreaterThan(20);
  expect(Math.abs(heard.ride.offsetMs.median)).toBeLessThan(4);
});

it('[CL27] draws the report as a page', async () => {
  const picture = join(folder, 'take.svg');
  const take = join(folder, 'exercises/01.mid');
  const { status } = await run('listen', take, ...options(), '--picture', picture);
  expect(status).toBe(0);
  expect(await readFile(picture, 'utf8')).toMatch(
    /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg".*T · exercise 1<\/title>/s,
  );
  const nowhere = await run('listen', take, ...options(), '--picture', join(folder, 'none/take.svg'));
  expect(nowhere).toMatchObject({ status: 2, out: '' });
  expect(nowhere.err).toMatch(
    /^--picture: .*none\/take\.svg: there is no such file or folder; expected a file such as take\.svg$/,
  );
});

it.each([
  ['16-bit mono WAV at 48 kHz', ['-ac', '1', '-ar', '48000', '-c:a', 'pcm_s16le', 'a.wav']],
  ['24-bit WAV', ['-c:a', 'pcm_s24le', 'b.wav']],
  ['floating-point WAV', ['-c:a', 'pcm_f32le', 'c.wav']],
  ['M4A', ['-c:a', 'aac', 'd.m4a']],
  ['Opus', ['-c:a', 'libopus', 'e.webm']],
])('[CL20] hears the same strokes in %s', async (_, [...args]) => {
  const name = join(folder, args.pop() ?? '');
  // library: FFmpeg writes the file
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', join(folder, 'audio/01.wav'), ...args, name]);
  const { status, out } = await run('listen', name, ...options(), '--json');
  expect(status).toBe(0);
  const report = JSON.parse(out);
  expect(report.voices.ride).toMatchObject({ hits: 24, missed: 0 });
  expect(report.take.kind).toBe('audio');
});

it('[CL21] refuses what is no recording', async () => {
  const none = await run('listen', join(folder, 'none.wav'), ...options());
  expect(none).toMatchObject({ status: 2, out: '' });
  expect(none.err).toContain('there is no such file or folder; expected a recording');
  const text = await run('listen', lesson, ...options());
  expect(text.status).toBe(2);
  expect(text.err).toContain('found a text file, expected a recording such as take.wav');
  const silent = join(folder, 'silent.wav');
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', 'anullsrc', '-t', '3', silent]);
  // a recording in which nobody plays is a verdict and no failure
  const nobody = await run('listen', silent, ...options());
  expect(nobody).toMatchObject({ status: 0, err: '' });
  expect(nobody.out).toMatch(/^Nobody was heard playing\..*\nThe recording is silent\./);
  const json = JSON.parse((await run('listen', silent, ...options(), '--json')).out);
  expect(json.verdict).toEqual({
    level: 'intermediate',
    is: 'not judged',
    about: [{ what: 'nobody-played' }],
  });
  const other = await run('listen', join(folder, 'audio/01.wav'), '--lesson', lesson, '--exercise', '4');
  expect(other.err).toBe('--exercise: found 4, expected a number from 1 to 1');
});

/** Ticks a quarter note. */
const BEAT = 480;

/** Swing on an electronic kit: ride with bell, open and pedal hi-hat keys, a change of tempo after two bars. */
function electronicTake(): Buffer {
  const events: { readonly tick: number; readonly event: MidiEvent }[] = [
    { tick: 0, event: { deltaTime: 0, type: 'setTempo', meta: true, microsecondsPerBeat: 600_000 } },
    { tick: 8 * BEAT, event: { deltaTime: 0, type: 'setTempo', meta: true, microsecondsPerBeat: 594_000 } },
  ];
  const hit = (tick: number, noteNumber: number, velocity: number) => {
    const note = { deltaTime: 0, channel: 9, noteNumber };
    events.push({ tick, event: { ...note, type: 'noteOn', velocity } });
    events.push({ tick: tick + 30, event: { ...note, type: 'noteOff', velocity: 0 } });
  };
  for (let bar = 0; bar < 4; bar += 1) {
    for (let beat = 0; beat < 4; beat += 1) {
      const at = (4 * bar + beat) * BEAT + 97;
      hit(at + bar, beat === 0 ? 53 : 51, 90);
      if (beat % 2 === 1) {
        hit(at + 320, 59, 80);
        hit(at - 3, 44, 60);
      }
      hit(at + 5, 35, 32);
    }
    for (const slot of [0, 800, 960, 1280, 1760])
      hit(4 * BEAT * bar + slot + 101, slot === 1760 ? 40 : 38, 100);
  }
  const inOrder = events.toSorted((a, b) => a.tick - b.tick);
  const track = inOrder.map(({ tick, event }, i) => ({
    ...event,
    deltaTime: tick - (inOrder[i - 1]?.tick ?? 0),
  }));
  const header = { format: 0, numTracks: 1, ticksPerBeat: BEAT } as const;
  return Buffer.from(
    writeMidi({ header, tracks: [[...track, { deltaTime: 0, type: 'endOfTrack', meta: true }]] }),
  );
}

it('[CL22] takes the strokes of an electronic kit exactly as the file has them', async () => {
  const take = join(folder, 'take.mid');
  // library: midi-file 1.2 writes the file and reads it again
  const content = electronicTake();
  await writeFile(take, content);
  const { notes } = readOutside(content);
  const { status, out } = await run('listen', take, ...options(), '--json');
  expect(status).toBe(0);
  const report = JSON.parse(out);
  expect(report.take.kind).toBe('midi');
  expect(report.strokes).toHaveLength(notes.length);
  // standard: General MIDI percussion key map; published: Groove MIDI Dataset, keys of electronic kits
  const voices: Record<number, string> = {
    53: 'ride',
    51: 'ride',
    59: 'ride',
    44: 'hihat-foot',
    35: 'bass',
    38: 'snare',
    40: 'snare',
  };
  const sorted = (list: readonly string[]) => list.toSorted();
  for (const [i, [seconds]] of notes.entries()) {
    expect(Math.abs(report.strokes[i].timeSeconds - seconds)).toBeLessThan(1e-9);
  }
  expect(sorted(report.strokes.map((s: { voice: string }) => s.voice))).toEqual(
    sorted(notes.map(([, , key]) => voices[key] as string)),
  );
  // definition: the last stroke of every bar is on the rim, where the exercise writes snare
  expect(report.voices.snare).toMatchObject({ hits: 20, missed: 0, extra: 0 });
  // standard: DLS and SoundFont 2: 40·log10(v/127) dB, forte at velocity 90
  expect(report.voices.snare.levelDb).toBeCloseTo(40 * Math.log10(100 / 90), 9);
  expect(report.notHeard).toEqual([]);
});

it('[CL22] says what is wrong with a MIDI file', async () => {
  const broken = join(folder, 'broken.mid');
  await writeFile(broken, 'MThd\0\0');
  const { status, err } = await run('listen', broken, ...options());
  expect(status).toBe(2);
  expect(err).toMatch(/broken\.mid: byte \d+: error: found/);
});

/** A MIDI file of notes on channel 10, `[tick of 96 a quarter, key]`, by an outside writer. */
async function fileOf(name: string, notes: readonly (readonly [number, number])[]): Promise<string> {
  let at = 0;
  const events = notes.map(([tick, noteNumber]): MidiEvent => {
    const deltaTime = tick - at;
    at = tick;
    return { type: 'noteOn', deltaTime, channel: 9, noteNumber, velocity: 90 } as MidiEvent;
  });
  const header = { format: 0, numTracks: 1, ticksPerBeat: 96 } as const;
  const path = join(folder, name);
  await writeFile(path, Buffer.from(writeMidi({ header, tracks: [events] })));
  return path;
}

it('[CL43] learns the keys of a kit, and reads a take with them', async () => {
  const backbeat = join(folder, 'backbeat.lesson.yaml');
  await writeFile(
    backbeat,
    'title: T\ntempo: 120\ngroove: {hihat: xx xx xx xx, bass: x . x .}\nexercises: [. x . x]\n',
  );
  const pads = await fileOf('pads.mid', [
    [0, 36],
    [96, 100],
    [192, 101],
    [288, 42],
  ]);
  const keys = join(folder, 'kit.keys');
  const learnt = await run('keys', pads, '--pads', 'bass,snare,snare,hihat', '--out', keys);
  expect(learnt).toMatchObject({ status: 0, out: `4 keys written to ${keys}.` });
  const short = await run('keys', pads, '--pads', 'bass,snare');
  expect(short.status).toBe(2);
  expect(short.err).toContain('found 4 keys (36, 100, 101, 42), expected one for each of 2 pads');
  // definition: eight bars of backbeats, three on the head and one on the rim
  const notes = Array.from({ length: 64 }, (_, eighth): (readonly [number, number])[] => {
    const at = eighth * 48;
    const drum = eighth % 4 === 0 ? 36 : eighth % 16 === 2 ? 101 : 100;
    return eighth % 2 === 0 ? [[at, 42] as const, [at, drum] as const] : [[at, 42] as const];
  }).flat();
  const take = await fileOf('take.mid', notes);
  const heard = (...more: string[]) =>
    run('listen', take, '--lesson', backbeat, '--exercise', '1', '--json', ...more);
  expect(JSON.parse((await heard('--keys', keys)).out).voices.snare).toMatchObject({ hits: 16, missed: 0 });
  expect(JSON.parse((await heard()).out).voices.snare).toMatchObject({ hits: 0, missed: 16 });
  await writeFile(keys, '38: snare\n200: snare\n39: snar\n');
  const wrong = await heard('--keys', keys);
  expect(wrong).toMatchObject({ status: 2 });
  expect(wrong.err).toBe(
    `${keys}:2: found "200", expected a MIDI key from 0 to 127\n${keys}:3: found "snar", expected a voice (did you mean "snare"?)`,
  );
});

it('[CL46] writes down a recording and a file of notes without a lesson, and keeps it as one', async () => {
  const kept = join(folder, 'heard.lesson.yaml');
  const { status, out } = await run('hear', join(folder, 'exercises/01.mid'), '--out', kept);
  expect(status).toBe(0);
  // definition: the lesson that the file was built of
  expect(out.split('\n')).toEqual([
    '4 bars of 4/4 at 100 quarter notes a minute, feel triplet.',
    'Groove, in every bar:',
    '  ride          x x.x x x.x',
    '  hi-hat foot   . x . x',
    '  bass drum     x x x x',
    'Exercise 1:',
    '  snare         x.. ..x x.x ..x',
    `The groove and 1 exercise are kept in ${kept}.`,
  ]);
  expect(await run('check', kept)).toMatchObject({ status: 0, out: `${kept}: in order, 1 exercise` });
  const sound = JSON.parse((await run('hear', join(folder, 'audio/01.wav'), '--json')).out);
  expect(sound).toMatchObject({ meter: '4/4', feel: 'triplet', comping: 'snare' });
  expect(sound.bpm).toBeCloseTo(100, 0);
  expect(sound.groove.ride).toBe('x x.x x x.x');
  expect(sound.bars).toHaveLength(4);
  const odd = await run('hear', join(folder, 'audio/01.wav'), '--meter', 'four');
  expect(odd).toMatchObject({
    status: 2,
    err: '--meter: found "four", expected a meter such as 4/4, 3/4 or 12/8',
  });
  const short = await run('hear', await fileOf('short.mid', [[0, 36]]));
  expect(short.status).toBe(2);
  expect(short.err).toContain('No beat could be followed through this take');
});
