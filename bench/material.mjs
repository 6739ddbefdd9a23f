/** What several benches need: a lesson of their own text, a form of so many bars, and the processor's time. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseLesson } from '@shedbook/core';

/**
 * The lesson that a bench writes for itself.
 * @param {string} text
 * @throws Error with the problems of a text that is none
 */
export function lessonOf(text) {
  const { lesson, problems } = parseLesson(text, 'bench.lesson.yaml');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/**
 * The lessons of a folder, each many times under titles of their own.
 * @param {string} folder
 * @param {number} count
 */
export function lessonTexts(folder, count) {
  const files = readdirSync(folder).filter((file) => file.endsWith('.lesson.yaml'));
  const read = files.map((file) => readFileSync(join(folder, file), 'utf8'));
  return Array.from({ length: count }, (_, index) =>
    (read[index % read.length] ?? '').replace(
      /^title: (.*)$/m,
      (_line, title) => `title: ${title} ${index + 1}`,
    ),
  );
}

/**
 * The form that goes through so many bars of the pattern once, without a count-in.
 * @param {number} bars
 * @returns {import('@shedbook/core').Form}
 */
export function barsOnce(bars) {
  return {
    name: 'take',
    sections: [{ play: 'pattern', bars, ending: null }],
    repeat: 1,
    countInBars: 0,
  };
}

/**
 * Processor time of some work, in seconds.
 * @param {() => unknown} work
 */
export function processorSeconds(work) {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/**
 * Processor time of the quickest of several rounds, in seconds: the machine may be shared.
 * @param {number} rounds
 * @param {() => unknown} work
 */
export const quickest = (rounds, work) =>
  Math.min(...Array.from({ length: rounds }, () => processorSeconds(work)));

/**
 * What `time` of bash says with `TIMEFORMAT="%U %S"`, in seconds: the last line of a text.
 * @param {string} said
 */
export function timedSeconds(said) {
  const last = said.trim().split('\n').at(-1) ?? '';
  return last.split(' ').reduce((sum, seconds) => sum + Number(seconds), 0);
}

/**
 * The address of a server that listens on a port of this machine.
 * @param {import('node:http').Server} server
 */
export function addressOfServer(server) {
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server listens on no port');
  return `http://127.0.0.1:${address.port}/`;
}
