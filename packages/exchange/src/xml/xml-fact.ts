/** What is wrong with the XML of a file and what would be right, as facts. */
import type { Fact } from '@shedbook/core';

/** What is found in XML, or expected of it. */
export type XmlFact =
  /** A fault in the parser's own words. */
  | (Fact & { readonly fact: 'xml-parser'; readonly message: string })
  | (Fact & { readonly fact: 'xml-well-formed' | 'musicxml-4' });
