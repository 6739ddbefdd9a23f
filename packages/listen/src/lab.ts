/** The steps of listening, for those who measure them one by one. */
export { formGrid } from './align/form-grid.ts';
export { hearFreely } from './decide/evidence.ts';
export { heardIn, reportOn } from './listen.ts';
