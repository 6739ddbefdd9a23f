import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formOf, funk, lessonOf, swing } from '../../../../internal/testing/loops.ts';
import { keyOf, logOf, loops, MISSED_LET, type Played, TODAY } from '../../test/students.ts';
import { FIRM_CONFIDENCE, standExercises } from './exercises.ts';
import { exercisesOf } from './shelf.ts';
import { type Skill, skillsInLoop, skillsOf } from './skills.ts';
import { standSkills } from './standings.ts';
import { wilsonLower } from './wilson.ts';

const SHARE_DECIMALS = 3;

it('[CH22] the sure part of a share is the lower Wilson bound', () => {
  // definition: n of n gives n / (n + z^2), z = 1.96: 10 / 13.84
  expect(wilsonLower(10, 10)).toBeCloseTo(0.722, SHARE_DECIMALS);
  // definition: nothing tried, nothing sure; none of ten, bound 0
  expect(wilsonLower(0, 0)).toBe(0);
  expect(wilsonLower(0, 10)).toBe(0);
  // definition: (p + z²/2n − z·√(p(1−p)/n + z²/4n²)) / (1 + z²/n) for 5 of 10: 0.2366
  expect(wilsonLower(5, 10)).toBeCloseTo(0.237, SHARE_DECIMALS);
});

function stand(played: readonly Played[], today = TODAY) {
  return standExercises([swing], logOf(...played), today);
}

function firstOf(played: readonly Played[], today = TODAY) {
  const standing = stand(played, today)[0];
  if (!standing) throw new Error('the swing sheet has exercises');
  return standing;
}

it('[CH22] confidence grows with clean loops and fades with days', () => {
  const clean = (count: number) => firstOf([{ number: 1, daysAgo: 1, loops: loops(count, 120) }]).evidence;
  expect(clean(12)?.confidence).toBeGreaterThan(clean(4)?.confidence ?? 1);
  const played = [{ number: 1, daysAgo: 1, loops: loops(12, 120) }];
  fc.assert(
    fc.property(fc.nat(300), fc.nat(300), (a, b) => {
      const at = (days: number) => firstOf(played, TODAY + days).evidence?.confidence ?? 0;
      expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)));
    }),
    { numRuns: 30, seed: 14 },
  );
});

it('[CH22] what was played later weighs more than what was played before', () => {
  const poor = loops(8, 120, 'stumble');
  const good = loops(8, 120);
  const risen = firstOf([
    { number: 1, daysAgo: 4, loops: poor },
    { number: 1, daysAgo: 2, loops: good },
  ]);
  const fallen = firstOf([
    { number: 1, daysAgo: 4, loops: good },
    { number: 1, daysAgo: 2, loops: poor },
  ]);
  expect(risen.evidence?.share).toBeGreaterThan(0.5);
  expect(fallen.evidence?.share).toBeLessThan(0.5);
});

it('[CH23] an exercise is new, being learned, firm or shaky', () => {
  const standingOf = (played: readonly Played[]) => firstOf(played).standing;
  expect(standingOf([])).toBe('new');
  expect(standingOf([{ number: 1, daysAgo: 1, loops: loops(3, 72, 'unheard') }])).toBe('new');
  expect(standingOf([{ number: 1, daysAgo: 1, loops: loops(8, 80) }])).toBe('learning');
  expect(standingOf([{ number: 1, daysAgo: 1, loops: loops(8, 80, 'stumble') }])).toBe('shaky');
  expect(standingOf([{ number: 1, daysAgo: 1, loops: loops(12, 120) }])).toBe('firm');
});

it('[CH23] what was firm is shaky once too long ago, and due before that', () => {
  const played = [{ number: 1, daysAgo: 0, loops: loops(12, 120) }];
  const days = Array.from({ length: 500 }, (_, i) => firstOf(played, TODAY + i));
  const faded = days.findIndex(({ standing }) => standing === 'shaky');
  const due = days.findIndex(({ evidence }, i) => (evidence?.dueDay ?? Infinity) <= TODAY + i);
  expect(due).toBeGreaterThan(0);
  expect(faded).toBeGreaterThan(due);
  expect(days[faded]?.evidence?.confidence).toBeLessThan(FIRM_CONFIDENCE);
});

it('[CH23] a tempo counts as clean with three clean loops on one day', () => {
  const two = firstOf([{ number: 1, daysAgo: 1, loops: [...loops(4, 80), ...loops(2, 88)] }]);
  expect(two.cleanBpm).toBe(80);
  const days = [3, 2, 1].map((daysAgo) => ({ number: 1, daysAgo, loops: loops(1, 96) }));
  expect(firstOf(days).cleanBpm).toBeNull();
});

it('[CH23] days to come are not looked at', () => {
  expect(firstOf([{ number: 1, daysAgo: -2, loops: loops(9, 120) }]).standing).toBe('new');
});

it('[CH25] the sore spot is what went wrong most often on the last day', () => {
  const late = {
    kind: 'late' as const,
    voice: 'bass' as const,
    place: { bar: 2, beat: 3, slot: 1 },
    amount: 40,
  };
  const played = [
    { number: 1, daysAgo: 4, loops: loops(9, 80, 'loose', [late]) },
    {
      number: 1,
      daysAgo: 1,
      loops: [...loops(2, 80, 'loose', [MISSED_LET]), ...loops(1, 80, 'loose', [late])],
    },
  ];
  // common practice: the snare is the left hand, the third triplet is "let"
  expect(firstOf(played).sore).toMatchObject({
    times: 2,
    told: { limb: 'left hand', place: { fact: 'syllable', syllable: 'let', beat: 1 } },
  });
  expect(firstOf([]).sore).toBeNull();
});

function names(skills: readonly Skill[]): readonly string[] {
  return skills.map(({ from, to, over }) => `${from ?? ''}>${to} ${over.join('+')}`);
}

it('[CH24] skills are cells and moves between cells over the limbs that play with them', () => {
  const lesson = lessonOf('title: T\ngroove: {ride: x ., bass: . x}\nmeter: 2/4\nexercises: [..X x..]\n');
  const [exercise] = exercisesOf([{ id: 't', lesson }]);
  if (!exercise) throw new Error('one exercise');
  // definition: two cells in a loop of two beats: each cell, and the moves to it and back
  expect(names(skillsOf(lesson, exercise.exercise))).toEqual([
    '>..x lead hand',
    'x..>..x lead hand',
    '>x.. lead foot',
    '..x>x.. lead foot',
  ]);
});

it('[CH24] beats of time alone and beats that an ending replaces are no skill of the pattern', () => {
  const exercise = swing.lesson.exercises[3];
  if (!exercise) throw new Error('the swing sheet has exercises');
  const uses = skillsInLoop(swing.lesson, exercise, formOf(swing.lesson, 'four and two'));
  const beats = new Set(uses.map(({ bar, beat }) => `${bar}.${beat}`));
  // definition: four bars of "x.. ..x ... ..x" have three beats with strokes, less the beat of the ending
  expect(beats.size).toBe(11);
  expect(beats.has('4.4')).toBe(false);
  expect(Math.max(...uses.map(({ bar }) => bar))).toBe(4);
});

it('[CH24] a pattern that comes back after time alone is no move from where it stopped', () => {
  const exercise = swing.lesson.exercises[3];
  if (!exercise) throw new Error('the swing sheet has exercises');
  const one = (play: 'pattern' | 'time') => ({ play, bars: 1, ending: null });
  const form = { ...formOf(swing.lesson), sections: [one('pattern'), one('time'), one('pattern')] };
  const uses = skillsInLoop(swing.lesson, exercise, form).filter(({ beat }) => beat === 1);
  // definition: beat 1 of bar 1 is reached from the end of the loop, beat 1 of bar 3 from time alone
  expect(uses.map(({ bar, skill }) => [bar, skill.from])).toEqual([
    [1, null],
    [1, '..x'],
    [3, null],
  ]);
});

it('[CH24] a fault counts against the skills of its beat and no other', () => {
  const played = [{ number: 3, daysAgo: 1, loops: loops(10, 80, 'loose', [MISSED_LET]) }];
  const skills = standSkills([swing], logOf(...played), TODAY);
  const struck = skills.filter(({ skill }) => skill.from === null && skill.to === '..x');
  const first = skills.filter(({ skill }) => skill.from === null && skill.to === 'x..');
  // definition: ten loops of four bars "..x x.. ... ...", one "..x" of four missed in every loop
  expect(struck.map(({ evidence }) => [evidence.tries, evidence.share])).toEqual([[40, 0.75]]);
  expect(first.map(({ evidence }) => evidence.share)).toEqual([1]);
  expect(skills.some(({ skill }) => skill.to === '...')).toBe(false);
});

it('[CH24] only what an ear heard says anything about a skill', () => {
  const said = [{ number: 1, daysAgo: 1, loops: loops(10, 80), heardBy: 'student' as const }];
  expect(standSkills([swing], logOf(...said), TODAY)).toEqual([]);
});

it('[CH17] practice is found again after the sheet is renumbered, and forgotten exercises do no harm', () => {
  const log = logOf(
    { number: 1, daysAgo: 1, loops: loops(12, 120) },
    { shelf: funk, number: 1, daysAgo: 1, loops: loops(3, 60) },
  );
  const [first, ...rest] = swing.lesson.exercises;
  if (!first) throw new Error('the swing sheet has exercises');
  const exercises = [...rest, first].map((exercise, i) => ({ ...exercise, number: i + 1 }));
  const moved = { id: swing.id, lesson: { ...swing.lesson, exercises } };
  const last = standExercises([moved], log, TODAY).at(-1);
  expect(last).toMatchObject({ key: keyOf(swing, 1), standing: 'firm', exercise: { number: 6 } });
});

it('[CH17] a pattern that stands twice on a sheet is one exercise', () => {
  const lesson = lessonOf('title: T\nexercises: [x . x ., x . x ., . x . x]\n');
  expect(exercisesOf([{ id: 't', lesson }]).map(({ exercise }) => exercise.number)).toEqual([1, 3]);
});
