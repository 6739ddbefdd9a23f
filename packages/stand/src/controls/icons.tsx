/** Small drawings for buttons; each button has words too. */

const PATHS = {
  back: 'M15 5l-7 7 7 7',
  next: 'M9 5l7 7-7 7',
  plus: 'M12 5v14M5 12h14',
  more: 'M5 12h.01M12 12h.01M19 12h.01',
  undo: 'M8 5L4 9l4 4M4 9h9a6 6 0 010 12h-3',
  redo: 'M16 5l4 4-4 4M20 9h-9a6 6 0 000 12h3',
  up: 'M12 19V5M6 11l6-6 6 6',
  down: 'M12 5v14M6 13l6 6 6-6',
  copy: 'M9 9h11v11H9zM5 15H4V4h11v1',
  bin: 'M5 7h14M10 7V4h4v3M7 7l1 13h8l1-13M10.500 11v5M13.500 11v5',
  file: 'M12 15V4M7 9l5-5 5 5M4 15v5h16v-5',
  play: 'M8 5l11 7-11 7z',
  stop: 'M7 7h10v10H7z',
  minus: 'M5 12h14',
  check: 'M5 12l5 5 9-11',
  close: 'M6 6l12 12M18 6L6 18',
  print: 'M7 9V4h10v5M7 17H4V9h16v8h-3M7 14h10v6H7z',
  tune: 'M4 7h9M17 7h3M15 5v4M4 17h3M11 17h9M9 15v4',
  keys: 'M3 7h18v10H3zM7 11h.01M11 11h.01M15 11h.01M8 14h8',
} as const;

/** A drawing by name. */
export type IconName = keyof typeof PATHS;

/** A drawing of one line, hidden from screen readers. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true" className={`icon-${name}`}>
      <path d={PATHS[name]} strokeWidth={name === 'more' ? 3.2 : undefined} />
    </svg>
  );
}
