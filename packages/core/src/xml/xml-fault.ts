/**
 * What keeps a text from being well-formed XML, as facts in place of the reader's own English.
 * Source: XML 1.0, fifth edition, and the clauses of saxes 6.0.
 */

/** A fault that has no values. */
interface PlainXmlFault {
  readonly fact:
    | 'xml-character'
    | 'xml-ampersand'
    | 'xml-attribute'
    | 'xml-name'
    | 'xml-outside'
    | 'xml-without-element'
    | 'xml-comment'
    | 'xml-declaration'
    | 'xml-breaks-off'
    | 'xml-out-of-place';
}

/** More elements than any score has, in each other or in all. */
interface XmlElementsFault {
  readonly fact: 'xml-too-deep' | 'xml-too-many';
  /** The number of elements that there may be. */
  readonly most: number;
}

/** What is found in a text that is no well-formed XML. */
export type XmlFaultFact =
  | PlainXmlFault
  | {
      readonly fact: 'xml-attribute-twice' | 'xml-never-ended' | 'xml-never-begun';
      readonly name: string;
    }
  /** An end tag inside an element that began on a line and has another name. */
  | { readonly fact: 'xml-end-tag'; readonly name: string; readonly fromLine: number }
  | XmlElementsFault;

/** The reader's clauses that are not about a place where something else should stand. */
const CLAUSES: readonly (readonly [RegExp, PlainXmlFault['fact']])[] = [
  [/^disallowed character$|character entity/, 'xml-character'],
  [/entity/, 'xml-ampersand'],
  [/attribute/, 'xml-attribute'],
  [/disallowed character in (?:tag|closing tag)|malformed name/, 'xml-name'],
  [/outside of root|only one root/, 'xml-outside'],
  [/must contain a root/, 'xml-without-element'],
  [/comment/, 'xml-comment'],
  [
    /declaration|processing instruction|^version|^encoding|^standalone|^expected|^did not expect|^value /,
    'xml-declaration',
  ],
  [/unexpected end/, 'xml-breaks-off'],
];

/** The facts that name an element or an attribute, by the reader's clause. */
const NAMING: readonly (readonly [RegExp, (name: string) => XmlFaultFact])[] = [
  [/^duplicate attribute: (.*)$/s, (name) => ({ fact: 'xml-attribute-twice', name })],
  [/^unclosed tag: (.*)$/s, (name) => ({ fact: 'xml-never-ended', name })],
  [/^unmatched closing tag: (.*)$/s, (name) => ({ fact: 'xml-never-begun', name })],
];

/** The fact for a clause of the reader. */
export function xmlFaultOf(message: string): XmlFaultFact {
  const clause = message.replace(/\.$/, '');
  for (const [pattern, factOf] of NAMING) {
    const name = pattern.exec(clause)?.[1];
    if (name !== undefined) return factOf(name);
  }
  return { fact: CLAUSES.find(([pattern]) => pattern.test(clause))?.[1] ?? 'xml-out-of-place' };
}
