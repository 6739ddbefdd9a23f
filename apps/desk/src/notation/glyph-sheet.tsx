/** The glyphs, once a document, for `use` to point at. */
import { memo } from 'react';
import { GLYPH_OUTLINES } from './layout.ts';
import styles from './notation.module.css';

/** Units of the outlines to units of the layout: 250 a space to 10 a space, y turned down. */
const SCALE = 'scale(0.04,-0.04)';

/** Hidden definitions; stands once at the top of the desk. */
export const GlyphSheet = memo(function GlyphSheet() {
  return (
    <svg className={styles.glyphSheet} aria-hidden="true" width="0" height="0">
      <defs>
        {GLYPH_OUTLINES.map(([name, outline]) => (
          <path key={name} id={`glyph-${name}`} d={outline} transform={SCALE} />
        ))}
      </defs>
    </svg>
  );
});
