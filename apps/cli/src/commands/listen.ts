/** `shedbook listen`: what was really played in a recording of an exercise. */
import { type Lesson, VOICE_FACTS, type Voice, type VoiceReport } from '@shedbook/core';
import type { FullReport, PlaceFinding } from '@shedbook/listen';
import { formNamed } from '../build/request.ts';
import { InputError } from '../input-error.ts';
import { readLessonFile, requireExercise, requireLesson } from '../lesson-file.ts';
import { hearTake } from '../listen/hear.ts';
import type { Terminal } from '../terminal.ts';

/** What the command line asks for. */
export interface ListenRequest {
  readonly take: string;
  readonly lesson: string;
  readonly exercise: number;
  readonly form?: string;
  readonly tempo?: number;
  readonly json?: boolean;
}

/** Offsets under this are not spoken of: nobody hears them in music. Source: Friberg & Sundberg 1995, 6 ms. */
const NOTICED_MS = 6;
const MOST_FINDINGS = 3;

function place({ bar, beat, slot, slots }: PlaceFinding): string {
  const where = slot === 1 ? `beat ${beat}` : `slot ${slot} of ${slots} on beat ${beat}`;
  return `${where} of bar ${bar}`;
}

function findingText(finding: PlaceFinding): string {
  const voice = VOICE_FACTS[finding.voice].label;
  const often = `${finding.times} of ${finding.of} times`;
  if (finding.kind === 'missed') return `The ${voice} on ${place(finding)} is missing ${often}.`;
  const ms = Math.round(Math.abs(finding.offsetMs));
  return `The ${voice} on ${place(finding)} comes ${ms} ms ${finding.kind} ${often}.`;
}

function voiceLine([name, voice]: readonly [string, VoiceReport], balance: FullReport['balanceDb']): string {
  const label = VOICE_FACTS[name as Voice].label.padEnd(13);
  const { hits, missed, extra, offsetMs } = voice;
  const due = `${hits} of ${hits + missed}`.padStart(9);
  const ms = Math.round(offsetMs.median);
  const time = Math.abs(ms) < NOTICED_MS ? 'in time' : `${Math.abs(ms)} ms ${ms > 0 ? 'late' : 'early'}`;
  const level = balance[name as Voice];
  const db = level === undefined ? '' : `${level > 0 ? '+' : ''}${level.toFixed(0)} dB`;
  return `  ${label}${due}  ${String(extra).padStart(5)}  ${time.padEnd(11)} ±${Math.round(offsetMs.spread)} ms  ${db}`;
}

function reportLines(report: FullReport): readonly string[] {
  const { alignment, swingRatio } = report;
  const swing = swingRatio ? `, swing ${swingRatio.median.toFixed(2)}:1` : '';
  const findings = report.findings.slice(0, MOST_FINDINGS).map(findingText);
  return [
    `${alignment.bpm.toFixed(1)} quarter notes a minute from ${alignment.startSeconds.toFixed(2)} s on${swing}.`,
    ...(findings.length > 0 ? findings : ['Nothing stands out at any one place.']),
    `  ${'voice'.padEnd(13)}${'heard'.padStart(9)}  extra  time        spread  level`,
    ...Object.entries(report.voices).map((each) => voiceLine(each, report.balanceDb)),
    ...report.notHeard,
  ];
}

async function hear(request: ListenRequest, lesson: Lesson, terminal: Terminal): Promise<FullReport> {
  const { exercise, tempo } = request;
  const form = formNamed(lesson, request.form ?? 'loop');
  const asked = { lesson, exercise, form, ...(tempo === undefined ? {} : { bpm: tempo }) };
  const { report, refusal } = await hearTake(request.take, asked, terminal.warn);
  if (!report) throw new InputError(`${request.take}: ${refusal.message}`);
  return report;
}

/**
 * Listens to a recording and prints its report. @returns the exit status.
 * @throws InputError when the recording cannot be read or is not of this exercise.
 */
export async function listenCommand(request: ListenRequest, terminal: Terminal): Promise<number> {
  const lesson = requireLesson(await readLessonFile(request.lesson), terminal.warn);
  requireExercise(lesson, request.exercise, '--exercise');
  terminal.progress('Listening …');
  const report = await hear(request, lesson, terminal);
  terminal.progress(null);
  if (request.json) terminal.say(JSON.stringify(report, null, 2));
  else for (const line of reportLines(report)) terminal.say(line);
  return 0;
}
