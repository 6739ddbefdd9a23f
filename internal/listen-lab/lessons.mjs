/**
 * Plans takes: which lesson, what of it is played, how. Prints one JSON line a take; takes.py renders them.
 *
 * Usage: node lessons.mjs COUNT SEED. Patterns are drawn at random; everything follows from the seed.
 */
import { parseLesson, perform, seededRandom } from '@shedbook/core';

const CELLS = ['x..', '.x.', '..x', 'xx.', 'x.x', '.xx', 'xxx', '...', '..x', 'x.x', '...'];
const EVEN = ['x.', '.x', 'xx', '..', '.x', 'x.'];
const SIXTEENTHS = ['x...', '...g', '.g..', 'X..g', '..x.', '....', 'x..g', '.gX.', '....'];

const STYLES = [
  {
    name: 'swing',
    weight: 5,
    meter: '4/4',
    cells: CELLS,
    comping: 'snare',
    feel: ['triplet', '1.7:1', '2.4:1'],
    bpm: [70, 190],
    groove: { ride: 'x x.x x x.x', 'hihat-foot': '. x . x', bass: 'x x x x' },
  },
  {
    name: 'swing side stick',
    weight: 1,
    meter: '4/4',
    cells: CELLS,
    comping: 'sidestick',
    feel: ['triplet'],
    bpm: [80, 180],
    groove: { ride: 'x x.x x x.x', 'hihat-foot': '. x . x', bass: 'x x x x' },
  },
  {
    name: 'waltz',
    weight: 1,
    meter: '3/4',
    cells: CELLS,
    comping: 'snare',
    feel: ['triplet', '2.2:1'],
    bpm: [90, 180],
    groove: { ride: 'x x.x x', 'hihat-foot': '. x .', bass: 'x . .' },
  },
  {
    name: 'shuffle',
    weight: 1,
    meter: '4/4',
    cells: ['...', '..x', '...', 'x.x'],
    comping: 'bass',
    feel: ['triplet'],
    bpm: [80, 140],
    groove: { hihat: 'x.x x.x x.x x.x', snare: '. X . X', bass: 'x . x .' },
  },
  {
    name: 'bossa',
    weight: 1,
    meter: '4/4',
    cells: EVEN,
    comping: 'sidestick',
    feel: ['even'],
    bpm: [100, 150],
    groove: { ride: 'xx xx xx xx', 'hihat-foot': '. x . x', bass: 'x. .x x. .x' },
  },
  {
    name: 'funk',
    weight: 1,
    meter: '4/4',
    cells: SIXTEENTHS,
    comping: 'snare',
    feel: ['even'],
    bpm: [70, 105],
    groove: { hihat: 'x.x. x.x. x.x. x.x.', bass: 'x... ..x. ..x. ....' },
  },
  {
    name: 'rock',
    weight: 1,
    meter: '4/4',
    cells: EVEN,
    comping: 'bass',
    feel: ['even'],
    bpm: [80, 140],
    groove: { hihat: 'xx xx xx xx', snare: '. X . X', bass: 'x . x .' },
  },
  {
    name: 'toms',
    weight: 1,
    meter: '4/4',
    cells: CELLS,
    comping: 'tom-high',
    second: 'tom-low',
    feel: ['triplet'],
    bpm: [80, 140],
    groove: { ride: 'x x.x x x.x', 'hihat-foot': '. x . x', bass: 'x . x .' },
  },
];

const [count, seed] = [Number(process.argv[2]), process.argv[3]];
const random = seededRandom(`takes ${seed}`);
const pick = (list) => list[random.below(list.length)];
const between = (low, high) => low + (high - low) * random.next();

function style() {
  let ticket = random.below(STYLES.reduce((sum, s) => sum + s.weight, 0));
  return STYLES.find((each) => {
    ticket -= each.weight;
    return ticket < 0;
  });
}

function bar(s) {
  const beats = Number(s.meter[0]);
  const cells = Array.from({ length: beats }, () => pick(s.cells));
  if (cells.every((cell) => !/[a-wxX]/.test(cell))) cells[1] = s.cells.find((cell) => /x/.test(cell));
  return cells.join(' ');
}

function text(s, exercise, feel, balance) {
  const lines = [`title: Take`, `meter: ${s.meter}`, `feel: ${feel}`, 'groove:'];
  for (const [voice, pattern] of Object.entries(s.groove)) lines.push(`  ${voice}: "${pattern}"`);
  if (balance) {
    lines.push('balance:');
    for (const [voice, level] of Object.entries(balance)) lines.push(`  ${voice}: ${level.toFixed(1)}`);
  }
  lines.push(`exercises:`, '  - pattern:');
  for (const [voice, pattern] of Object.entries(exercise)) lines.push(`      ${voice}: "${pattern}"`);
  return lines.join('\n');
}

function lessonOf(source) {
  const { lesson, problems } = parseLesson(source, 'take.lesson.yaml');
  if (!lesson) throw new Error(`${JSON.stringify(problems)}\n${source}`);
  return lesson;
}

const numberOf = (lesson, form, bpm) => {
  const performance = perform(lesson, { exercise: 1, form, bpm });
  const beat = 60 / bpm;
  const strokes = performance.strokes.filter((stroke) => stroke.voice !== 'click');
  return { performance, strokes, beat };
};

for (let index = 0; index < count; index += 1) {
  const s = style();
  const bars = pick([1, 1, 2]);
  const exercise = { [s.comping]: Array.from({ length: bars }, () => bar(s)).join(' | ') };
  if (s.second) exercise[s.second] = Array.from({ length: bars }, () => bar(s)).join(' | ');
  const feel = s.feel[0];
  const expected = lessonOf(text(s, exercise, feel));
  const playedFeel = pick(s.feel);
  const balance = Object.fromEntries(
    Object.entries(expected.balance)
      .filter(([voice]) => voice !== expected.lead)
      .map(([voice, level]) => [
        voice,
        Math.max(
          -30,
          Math.min(12, level + between(-5, 5) + (voice === 'bass' && level < -10 ? between(0, 4) : 0)),
        ),
      ]),
  );
  const played = lessonOf(text(s, exercise, playedFeel, balance));
  const formName = pick(['loop', 'loop', 'four and two']);
  const form = expected.forms.find((f) => f.name === formName);
  const lessonBpm = Math.round(between(...s.bpm));
  const bpm = lessonBpm * between(0.85, 1.15);
  const a = numberOf(expected, form, lessonBpm);
  const b = numberOf(played, form, lessonBpm);
  console.log(
    JSON.stringify({
      index,
      style: s.name,
      lesson: text(s, exercise, feel),
      form: formName,
      lessonBpm,
      bpm,
      lead: expected.lead,
      comping: s.comping,
      beatsInBar: Number(s.meter[0]),
      bars: a.performance.bars.filter((x) => x.bar >= 1).length,
      swing: playedFeel === 'even' ? 1 : playedFeel === 'triplet' ? 2 : Number(playedFeel.split(':')[0]),
      strokes: b.strokes.map((stroke) => ({
        bar: stroke.written.bar,
        beat: stroke.written.beat,
        slot: stroke.written.slot,
        slots: stroke.slots,
        voice: stroke.voice,
        level: stroke.levelDb,
        beats: (stroke.timeSeconds - b.performance.countInSeconds) / b.beat,
      })),
    }),
  );
}
