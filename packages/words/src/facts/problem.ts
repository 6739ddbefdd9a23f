/** Problems in what a person wrote, each as one line of a language. */
import type { InputProblem } from '@shedbook/core';
import type { ByteProblem } from '@shedbook/exchange';
import { type Language, say } from './say.ts';
import type { FaultFact, RoomFact, Sayable } from './sayable.ts';

/** A problem whose facts there are sentences for. */
export type SayableProblem = InputProblem<RoomFact>;

type Fault = Pick<SayableProblem, 'found' | 'expected' | 'repair'>;

/** What was found, what would be right and a likely repair, as one fact. */
export function faultFact({ found, expected, repair }: Fault): FaultFact {
  const fault = { found, expected };
  return repair ? { fact: 'fault-with-repair', ...fault, repair } : { fact: 'fault', ...fault };
}

function sayFault(fault: Fault, language: Language<Sayable>): string {
  return say<Sayable>(faultFact(fault), language);
}

/** One line of text: `file:line:column: error: PATH: found …, expected … (…)`. */
export function formatProblem(problem: SayableProblem, language: Language<Sayable>): string {
  const place = `${problem.file}:${problem.line}:${problem.column}`;
  const field = problem.path === '' ? '' : `${problem.path}: `;
  const severity = say<Sayable>({ fact: problem.severity }, language);
  return `${place}: ${severity}: ${field}${sayFault(problem, language)}`;
}

/** One line of text for a problem in a binary file: `take.mid: byte 14: error: found …, expected … (…)`. */
export function formatByteProblem(file: string, problem: ByteProblem, language: Language<Sayable>): string {
  const { offset } = problem;
  const place = offset === null ? file : `${file}: ${say<Sayable>({ fact: 'byte', offset }, language)}`;
  const severity = say<Sayable>({ fact: problem.severity }, language);
  return `${place}: ${severity}: ${sayFault(problem, language)}`;
}
