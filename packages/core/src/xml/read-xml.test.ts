import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeXml } from './escape-xml.ts';
import { readXml, type XmlElement } from './read-xml.ts';

describe('reading XML', () => {
  it('[XM1] elements, attributes and entities are read', () => {
    // standard: XML 1.0, 2.4 and 4.6: the five predefined entities; 4.1: character references; 2.7: CDATA
    const { root } = readXml(
      '<?xml version="1.0"?><!-- x > y --><a b="1 &lt; 2" c=\'"\'><d/>&amp;&#65;&#x42;<![CDATA[<]]></a>',
    );
    expect(root?.attributes).toEqual({ b: '1 < 2', c: '"' });
    expect(root?.children.map((child) => child.name)).toEqual(['d']);
    expect(root?.text).toBe('&AB<');
  });

  it('[XM1] names lose their prefixes, and declarations of namespaces are left out', () => {
    const { root } = readXml('<s:a xmlns:s="u" xmlns="v" s:b="1" c="2"><s:d/></s:a>');
    expect([root?.name, root?.attributes]).toEqual(['a', { b: '1', c: '2' }]);
    expect(root?.children[0]?.name).toBe('d');
  });

  it('[XM1] an entity of the document stays as it is written, and one of nobody is refused', () => {
    expect(readXml('<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>').root?.text).toBe('&b;');
    expect(readXml('<a>&b;</a>').fault?.found).toEqual({ fact: 'xml-ampersand' });
  });

  it('[XM2] every element has its line and column, whatever ends a line', () => {
    const { root } = readXml('<a>\r\n <b\n c="d"/>\r<e\r\n/>\u{1f941}<f/></a>');
    const placeOf = ({ name, line, column }: XmlElement) => [name, line, column];
    // standard: XML 1.0, 2.11: CR LF, CR and LF each end one line; a sign outside the first plane is two code units
    expect(root?.children.map(placeOf)).toEqual([
      ['b', 2, 2],
      ['e', 4, 1],
      ['f', 5, 5],
    ]);
  });

  it('[XM3] what is not well formed is refused at its first fault', () => {
    // standard: XML 1.0, 3 (start and end tags match), 2.1 (one root), 2.2 (characters), 3.1 (unique attributes)
    expect(readXml('<a>\n<b></a></b>').fault).toEqual({
      line: 2,
      column: 8,
      found: { fact: 'xml-end-tag', name: 'b', fromLine: 2 },
    });
  });

  it.each([
    // standard: XML 1.0, 2.2 (characters), 2.4 (ampersands, "]]>"), 2.5 (comments), 2.8 and 2.6 (declaration, document
    // type, processing instructions), 3 (tags, one root) and 3.1 (attributes)
    ['xml-without-element', ''],
    ['xml-outside', 'a'],
    ['xml-outside', '<a/>b'],
    ['xml-outside', '<a/><b/>'],
    ['xml-character', '<a>\u0001</a>'],
    ['xml-character', '<a>\ud83e</a>'],
    ['xml-character', '<a>&#0;</a>'],
    ['xml-character', '<a b="<"/>'],
    ['xml-ampersand', '<a>snare & hats</a>'],
    ['xml-ampersand', '<a>&nobody;</a>'],
    ['xml-ampersand', '<a>&;</a>'],
    ['xml-attribute', '<a b/>'],
    ['xml-attribute', '<a b=c/>'],
    ['xml-attribute', '<a b="c"d="e"/>'],
    ['xml-attribute-twice', '<a b="1" b="2"/>'],
    ['xml-name', '<a><1/></a>'],
    ['xml-name', '<a></a 1>'],
    ['xml-never-ended', '<a><b>'],
    ['xml-never-begun', '</b>'],
    ['xml-comment', '<a><!-- b -- c --></a>'],
    ['xml-declaration', '<?xml version="2"?><a/>'],
    ['xml-declaration', ' <?xml version="1.0"?><a/>'],
    ['xml-declaration', '<?xml encoding="UTF-8"?><a/>'],
    ['xml-declaration', '<a/><!DOCTYPE a>'],
    ['xml-breaks-off', '<a b="c'],
    ['xml-out-of-place', '<a>]]></a>'],
    ['xml-out-of-place', '<a / >'],
    ['xml-out-of-place', '<!NOTHING><a/>'],
  ])('[XM6001] what is wrong is told as %s: %j', (fact, text) => {
    expect(readXml(text).fault).toMatchObject({ line: 1, found: { fact } });
  });

  it('[XM6001] an ampersand in a text is found where it stands, however far a reader looks for its end', () => {
    const at = { line: 2, column: 8, found: { fact: 'xml-ampersand' } };
    // standard: XML 1.0, 2.4: an ampersand begins a reference and nothing else
    for (const rest of ['</b>\n</a>', '</b>\n<c>;</c>\n</a>', '; hats</b></a>'])
      expect(readXml(`<a>\n<b>kick& snare${rest}`).fault, rest).toEqual(at);
    expect(readXml('<a><!-- kick & snare -->').fault?.found).toEqual({ fact: 'xml-never-ended', name: 'a' });
  });

  it('[XM3] any text gives a root or a fault inside it, never an exception', () => {
    const piece = fc.constantFrom(
      '<a>',
      '</a>',
      '<a',
      '/>',
      '&',
      ';',
      '<!',
      '[',
      'x',
      '"',
      '\n',
      '<?',
      '\r',
      '\ud83e',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const text = pieces.join('');
        const { root, fault } = readXml(text);
        expect(root === null).toBe(fault !== null);
        expect(fault?.line ?? 1).toBeLessThanOrEqual(text.split(/\r\n?|\n/).length);
        expect(fault?.column ?? 1).toBeGreaterThanOrEqual(1);
      }),
      { numRuns: 1000, seed: 3 },
    );
  });

  it('[XM4] any text written into XML comes back, but for what XML cannot hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        // standard: XML 1.0, 2.2, Char: no other control characters, surrogates, FFFE or FFFF
        const kept = text.replaceAll(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd');
        expect(readXml(`<a>(${escapeXml(text)})</a>`).root?.text).toBe(`(${kept})`);
      }),
    );
    expect(readXml(`<a b="${escapeXml('"<&>\'')}"/>`).root?.attributes.b).toBe('"<&>\'');
  });

  it('[XM2] elements without end are refused before they take memory', () => {
    expect(readXml('<a>'.repeat(3_000_000)).fault?.found).toEqual({ fact: 'xml-too-deep', most: 64 });
    const found = { fact: 'xml-too-many', most: 200_000 };
    expect(readXml(`<a>${'<b/>'.repeat(300_000)}</a>`).fault?.found).toEqual(found);
    expect(readXml(`${'<a>'.repeat(64)}${'</a>'.repeat(64)}`).fault).toBeNull();
  });
});
