/** Problems of a MusicXML text, each at the element it is about. */
import type { InputProblem, TextPlace } from '@shedbook/core';
import type { MusicXmlFact } from './musicxml-fact.ts';

/** What is said of an element; `repair` and `path` may be left out, `severity` is a warning when it is. */
export interface ElementProblem {
  readonly code: string;
  readonly found: MusicXmlFact;
  readonly expected: MusicXmlFact;
  readonly repair?: MusicXmlFact;
  readonly path?: string;
  readonly severity?: 'error' | 'warning';
}

/** Collects problems of one file. */
export class ProblemList {
  readonly #file: string;
  readonly all: InputProblem<MusicXmlFact>[] = [];

  constructor(file: string) {
    this.#file = file;
  }

  /** Adds a problem at an element. */
  add(at: TextPlace, problem: ElementProblem): void {
    const { code, found, expected, repair = null, path = '', severity = 'warning' } = problem;
    const { line, column } = at;
    this.all.push({ code, severity, file: this.#file, line, column, path, found, expected, repair });
  }
}
