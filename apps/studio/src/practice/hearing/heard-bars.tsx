/** The exercise with its groove, drawn in soft ink, and layers over it for what was heard. */
import type { NotatedBar } from '@shedbook/core';
import { memo } from 'react';
import { BarDrawing } from '../../notation/bar-drawing.tsx';
import { layOutBar } from '../../notation/layout.ts';

/** Units left and right of a bar, so that an early head on 1 is not cut. */
const MARGIN = 14;

interface HeardBarsProps {
  readonly bars: readonly NotatedBar[];
}

/** One picture a bar, so that long exercises break into lines. */
export const HeardBars = memo(function HeardBars({ bars }: HeardBarsProps) {
  const layouts = bars.map((bar) => layOutBar(bar, 'five lines'));
  const top = Math.min(-62, ...layouts.map((layout) => layout.top));
  const bottom = Math.max(52, ...layouts.map((layout) => layout.bottom));
  return (
    <div className="heard-bars">
      {layouts.map((layout, index) => (
        <svg
          key={index}
          className="notation heard-bar"
          viewBox={`${-MARGIN} ${top} ${layout.width + 2 * MARGIN} ${bottom - top}`}
          aria-hidden="true"
        >
          <g className="written">
            <BarDrawing layout={layout} staff="five lines" last={index === layouts.length - 1} />
          </g>
          <g data-marks={index} />
        </svg>
      ))}
    </div>
  );
});
