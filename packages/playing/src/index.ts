export * from './as-played.ts';
export * from './beat-at.ts';
export * from './clock.ts';
export * from './landings.ts';
export * from './on-bar.ts';
export * from './one-bar.ts';
export * from './program.ts';
export * from './shown-bar.ts';
