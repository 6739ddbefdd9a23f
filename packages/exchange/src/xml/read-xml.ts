/**
 * XML text to a tree of plain data with places; libxml2 judges whether the text is well formed.
 *
 * Conventions: nothing outside the text is ever loaded: no external entities, no document type from the net.
 */
import type { InputProblem } from '@shedbook/core';
import { ParseOption, XmlDocument, XmlParseError } from 'libxml2-wasm';
import { libxmlProblems } from './libxml-problems.ts';
import { type ReadElement, scanXml } from './scan-xml.ts';
import type { XmlFact } from './xml-fact.ts';

/** A document, or null when it is not well formed. */
export interface ReadXml {
  readonly root: ReadElement | null;
  readonly problems: readonly InputProblem<XmlFact>[];
}

/** The text is decoded already, so what its declaration says of an encoding is passed over. */
const SAFE =
  ParseOption.XML_PARSE_NO_XXE |
  ParseOption.XML_PARSE_NONET |
  ParseOption.XML_PARSE_BIG_LINES |
  ParseOption.XML_PARSE_IGNORE_ENC;

/** Reads a document; `file` names it in problems. */
export function readXml(text: string, file: string): ReadXml {
  try {
    XmlDocument.fromString(text, { url: file, option: SAFE }).dispose();
    return { root: scanXml(text), problems: [] };
  } catch (error) {
    if (!(error instanceof XmlParseError)) throw error;
    const wanted = { code: 'xml-not-well-formed', expected: { fact: 'xml-well-formed' } } as const;
    return { root: null, problems: libxmlProblems(error, file, wanted) };
  }
}

/** The first child with a name. */
export function childOf(element: ReadElement | undefined, name: string): ReadElement | undefined {
  return element?.children.find((child) => child.name === name);
}

/** All children with a name. */
export function childrenOf(element: ReadElement | undefined, name: string): readonly ReadElement[] {
  return element?.children.filter((child) => child.name === name) ?? [];
}

/** The first descendant down a path of names. */
export function descend(
  element: ReadElement | undefined,
  ...path: readonly string[]
): ReadElement | undefined {
  return path.reduce((at: ReadElement | undefined, name) => childOf(at, name), element);
}
