import { expect, it } from 'vitest';
import { inEnglish } from '../../../../internal/testing/in-english.ts';
import { FILE, problemsOf, read } from '../../test/reading.ts';
import { parseLesson } from '../document/parse.ts';
import { printLesson } from '../document/print.ts';
import { type MediumFault, mediaOf } from './media.ts';

const TEXT = `title: The grip
text: |
  Look:

  ![From above](pictures/grip.svg)
media: slow.mp3
sections:
  - heading: Ride
    media: [{file: arm.mp4, says: From the side}, slow.mp3]
    exercises:
      - {pattern: x x x x, media: pictures/grip.svg}
`;

it('[LE4200] files stand beside a lesson, its sections and exercises, and in its texts', () => {
  const lesson = read(TEXT);
  expect(lesson.media).toEqual([{ path: 'slow.mp3', says: null }]);
  expect(lesson.sections[0]?.media).toEqual([
    { path: 'arm.mp4', says: 'From the side' },
    { path: 'slow.mp3', says: null },
  ]);
  expect(lesson.exercises[0]?.media).toEqual([{ path: 'pictures/grip.svg', says: null }]);
  // definition: each file once, with what is said of it where it is first met
  expect(mediaOf(lesson)).toEqual([
    { path: 'pictures/grip.svg', says: 'From above' },
    { path: 'slow.mp3', says: null },
    { path: 'arm.mp4', says: 'From the side' },
  ]);
  expect(read(printLesson(lesson))).toEqual(lesson);
});

it('[LE4200] a section does not take the files of its lesson, nor a lesson those of exercises before its sections', () => {
  const lesson = read(
    'title: x\nmedia: a.png\nexercises: [x x x x]\nsections: [{heading: B, exercises: [. x . x]}]',
  );
  expect([lesson.media?.length, ...lesson.sections.map(({ media }) => media)]).toEqual([
    1,
    undefined,
    undefined,
  ]);
});

it('[LE4200] a name that leads elsewhere, or to what is not shown everywhere, is refused where it is written', () => {
  const elsewhere = [
    ...['/etc/a.png', '../a.png', 'x/../../a.png', 'https://example.org/a.png', 'C:/a.png', '~/a.png'],
    'data:image/png,x.png',
  ];
  for (const path of elsewhere) {
    expect(problemsOf(`title: x\nmedia: '${path}'\nexercises: [x x x x]`), path).toEqual([
      expect.stringContaining(
        `2:9: error: media: found "${path}", expected a path from the folder of the lesson`,
      ),
    ]);
  }
  const backslash = problemsOf("title: x\nmedia: 'pictures\\a.png'");
  expect(backslash).toEqual([expect.stringContaining('with /')]);
  const [kind = ''] = problemsOf('title: x\nexercises: [{pattern: x x x x, media: [a.png, {file: a.tiff}]}]');
  expect(kind).toMatch(
    /^2:54: error: exercises\[1\]\.media\[2\]\.file: found "a\.tiff", expected one of \.png, \.jpg/,
  );
  expect(read('title: x\nmedia: ./x/../A.PNG\nexercises: [x x x x]').media).toHaveLength(1);
});

it('[LE4200] what is wrong with a file is told at its line and column, in texts too', () => {
  const faults: Readonly<Record<string, MediumFault>> = {
    'pictures/grip.svg': 'scripts',
    'slow.mp3': 'missing',
    'arm.mp4': 'too-large',
  };
  const look = (path: string) => faults[path] ?? null;
  const told = parseLesson(TEXT, FILE, look).problems.map((problem) =>
    inEnglish(problem).replace(`${FILE}:`, ''),
  );
  // definition: counted by hand in the text above
  expect(told.map((line) => line.split(': error')[0])).toEqual(['5:17', '6:8', '9:20', '9:51', '11:35']);
  expect(told[0]).toContain('found "pictures/grip.svg", expected a picture without scripts');
  expect(told[1]).toContain('expected a file that is there');
  expect(told[2]).toContain('expected at most 30 MB');
  expect(parseLesson(TEXT, FILE, look).lesson).toBeNull();
});
