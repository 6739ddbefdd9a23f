/**
 * XML text to a tree of plain data with places, by libxml2.
 *
 * Conventions: nothing outside the text is ever loaded: no external entities, no document type from the net.
 */
import type { InputProblem } from '@shedbook/core';
import { ParseOption, XmlDocument, XmlElement, XmlParseError } from 'libxml2-wasm';
import { elementPlaces, type TextPlace } from './element-places.ts';

/** An element with its place. */
export interface ReadElement extends TextPlace {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly ReadElement[];
  /** All text in it, trimmed. */
  readonly text: string;
}

/** A document, or null when it is not well formed. */
export interface ReadXml {
  readonly root: ReadElement | null;
  readonly problems: readonly InputProblem[];
}

/** The text is decoded already, so what its declaration says of an encoding is passed over. */
const SAFE =
  ParseOption.XML_PARSE_NO_XXE |
  ParseOption.XML_PARSE_NONET |
  ParseOption.XML_PARSE_BIG_LINES |
  ParseOption.XML_PARSE_IGNORE_ENC;

function toPlain(element: XmlElement, places: Iterator<TextPlace>): ReadElement {
  const place: TextPlace = places.next().value ?? { line: element.line, column: 1 };
  const children: ReadElement[] = [];
  for (let node = element.firstChild; node; node = node.next) {
    if (node instanceof XmlElement) children.push(toPlain(node, places));
  }
  const attributes = Object.fromEntries(element.attrs.map((each) => [each.name, each.value]));
  const text = children.length > 0 ? '' : element.content.trim();
  return { ...place, name: element.name, attributes, children, text };
}

function notWellFormed(file: string, error: XmlParseError): readonly InputProblem[] {
  return error.details.map(({ line, col, message }) => ({
    code: 'xml-not-well-formed',
    severity: 'error',
    file,
    line: Math.max(1, line),
    column: Math.max(1, col),
    path: '',
    found: message.trim(),
    expected: 'well-formed XML',
    repair: null,
  }));
}

/** Reads a document; `file` names it in problems. */
export function readXml(text: string, file: string): ReadXml {
  try {
    const document = XmlDocument.fromString(text, { url: file, option: SAFE });
    const root = toPlain(document.root, elementPlaces(text)[Symbol.iterator]());
    document.dispose();
    return { root, problems: [] };
  } catch (error) {
    if (!(error instanceof XmlParseError)) throw error;
    return { root: null, problems: notWellFormed(file, error) };
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
