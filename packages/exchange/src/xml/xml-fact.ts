/** What is wrong with the XML of a file and what would be right, as facts. */
import type { Fact, XmlFaultFact } from '@shedbook/core';

/** What is found in XML, or expected of it. */
export type XmlFact = XmlFaultFact | (Fact & { readonly fact: 'xml-well-formed' });
