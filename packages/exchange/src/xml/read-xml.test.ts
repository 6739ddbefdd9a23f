import { readXml, type XmlElement } from '@shedbook/core';
import fc from 'fast-check';
import { XmlElement as LibraryElement, XmlCData, XmlDocument, XmlText } from 'libxml2-wasm';
import { describe, expect, it } from 'vitest';
import { anyLesson } from '../../test/lessons.ts';
import { writeMusicXml } from '../musicxml/write.ts';
import { printXml, type XmlNode, xml } from './write-xml.ts';

type Tree = readonly [string, Readonly<Record<string, string>>, string, readonly Tree[]];

function rootOf(text: string): XmlElement {
  const { root, fault } = readXml(text);
  if (fault) throw new Error(`${fault.found.fact} at ${fault.line}:${fault.column}`);
  return root;
}

function treeOf({ name, attributes, text, children }: XmlElement): Tree {
  return [name, attributes, text, children.map(treeOf)];
}

/** The same of an element as libxml2 has it. */
function libraryTree(element: LibraryElement): Tree {
  const children: Tree[] = [];
  let text = '';
  for (let node = element.firstChild; node; node = node.next) {
    if (node instanceof LibraryElement) children.push(libraryTree(node));
    if (node instanceof XmlText || node instanceof XmlCData) text += node.content;
  }
  const attributes = Object.fromEntries(element.attrs.map((each) => [each.name, each.value]));
  return [element.name, attributes, text.trim(), children];
}

function expectSameTree(text: string): void {
  const document = XmlDocument.fromString(text);
  // library: libxml2-wasm 0.7.2
  expect(treeOf(rootOf(text))).toEqual(libraryTree(document.root));
  document.dispose();
}

const NAMES = fc.constantFrom('a', 'b-c', '_d', 'e.1', 'é');

const { node } = fc.letrec<{ node: XmlNode }>((tie) => ({
  node: fc.record({
    name: NAMES,
    attributes: fc.dictionary(NAMES, fc.string({ unit: 'grapheme', maxLength: 6 }), { maxKeys: 2 }),
    content: fc.oneof(fc.string({ unit: 'grapheme', maxLength: 8 }), fc.array(tie('node'), { maxLength: 3 })),
  }),
}));

describe('reading XML', () => {
  it('[EX58] finds every element at its line and column, past comments, CDATA and document types', () => {
    const text =
      '<?xml version="1.0"?>\r\n<!DOCTYPE a [<!ENTITY b "<c>"><!-- ]> \' -->]>\n<!-- <d> --><a e="&lt;f>">\r <g/><![CDATA[<h>]]>\n\t<i>x</i></a>';
    const root = rootOf(text);
    const places = [root, ...root.children].map(({ name, line, column }) => [name, line, column]);
    expect(places).toEqual([
      ['a', 3, 13],
      ['g', 4, 2],
      ['i', 5, 2],
    ]);
    expectSameTree(text);
  });

  it('[EX68] finds the same elements, attributes and texts as the library', () => {
    expectSameTree('<a b=\'1 > 0\' c:d="\'" xmlns:c="e">&#65;&#x42;&amp;&apos;<![CDATA[ & ]]>&gt;</a>');
    expectSameTree('<a>\n<b   f = "1"\n/><c d="x\ty"></c >t</a>');
    fc.assert(
      fc.property(node, (each) => expectSameTree(printXml(xml(each.name, each.attributes, each.content)))),
    );
    fc.assert(
      fc.property(anyLesson, (lesson) => expectSameTree(writeMusicXml(lesson))),
      { numRuns: 10 },
    );
  });
});
