export { thirds } from '../../test/thirds.ts';
