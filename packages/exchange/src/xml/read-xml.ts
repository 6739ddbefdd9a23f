/** XML of a person's file: core's reader, with its fault as a problem of that file. */
import { type InputProblem, readXml, type XmlElement } from '@shedbook/core';
import type { XmlFact } from './xml-fact.ts';

/** A document, or null when it is not well formed. */
export interface XmlDocument {
  readonly root: XmlElement | null;
  readonly problems: readonly InputProblem<XmlFact>[];
}

/** Reads a document; `file` names it in problems. */
export function readXmlDocument(text: string, file: string): XmlDocument {
  const { root, fault } = readXml(text);
  if (root) return { root, problems: [] };
  const problem: InputProblem<XmlFact> = {
    code: 'xml-not-well-formed',
    severity: 'error',
    file,
    line: fault.line,
    column: fault.column,
    path: '',
    found: fault.found,
    expected: { fact: 'xml-well-formed' },
    repair: null,
  };
  return { root: null, problems: [problem] };
}
