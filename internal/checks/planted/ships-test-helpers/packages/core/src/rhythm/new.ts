export { lesson } from '../../../../internal/testing/browser.ts';
