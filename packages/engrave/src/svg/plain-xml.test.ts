import { readXml, type XmlElement } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barsOf, engraver } from '../../test/setup.ts';
import { type PlainElement, readPlainXml } from './plain-xml.ts';

/** What core's reader says of a text, without places. */
function bare({ name, attributes, children }: XmlElement): PlainElement {
  return { name, attributes, children: children.map(bare) };
}

function namesIn({ name, attributes, children }: PlainElement): PlainElement {
  return { name, attributes, children: children.map(namesIn) };
}

describe('reading XML as engraving writes it', () => {
  it('[EN7700] a tile is read in one go, and as the reader of any XML reads it', () => {
    // library: saxes 6.0, a strict reader of XML 1.0, through core's readXml
    const { svg } = engraver.engraveTile({
      ...{ id: 'e1', bars: barsOf({ ride: 'x.. x.x', snare: 'g.. ..X' }, '2/4') },
      ...{ staff: 'full', staffSpaceMm: 2, widthMm: null, title: 'Exercise 1' },
    });
    const plain = readPlainXml(svg.trim());
    expect(plain && namesIn(plain)).toEqual(bare(readXml(svg).root as XmlElement));
  });

  it('[EN7700] any text is read as that reader reads it, or left to it', () => {
    const piece = fc.constantFrom(
      ...['<a>', '</a>', '<a/>', '<b c="d">', '</b>', '<x:b xlink:c="1" xmlns:x="u"/>', '<a c="1" c="2"/>'],
      ...['<a', ' d="e>"', "f='g'", '>', '&', '&amp;', ']]>', '<!-- -->', 'x', ' ', '\n', '"', '<1/>', 'é'],
    );
    const text = fc.oneof(
      fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
      fc.array(piece, { maxLength: 6 }).map((pieces) => `<r>${pieces.join('')}</r>`),
    );
    let read = 0;
    fc.assert(
      fc.property(text, (written) => {
        const plain = readPlainXml(written);
        if (!plain) return;
        read += 1;
        const { root } = readXml(written);
        expect([written, namesIn(plain)]).toEqual([written, root && bare(root)]);
      }),
      { numRuns: 3000, seed: 7700 },
    );
    expect(read).toBeGreaterThan(200);
    expect(readPlainXml(`${'<a>'.repeat(70)}${'</a>'.repeat(70)}`)).toBeNull();
  });
});
